// SPDX-License-Identifier: MPL-2.0
// Found by fuzzing: messages that quoted control characters of the input and so ran over several lines.
#include <plate/design/design.h>
#include <plate/design/design_document.h>
#include <plate/design/design_error.h>

#include <doctest/doctest.h>

#include <string>

using namespace plate;

namespace
{

/// What a step complains of; empty if it does not.
template <class Step>
std::string error_of(const Step& step)
{
  try
  {
    step();
  }
  catch (const DesignError& error)
  {
    return error.what();
  }
  return {};
}

void check_one_line(const std::string& text, const char* begin)
{
  CAPTURE(text);
  CHECK(text.rfind(begin, 0) == 0);
  CHECK(text.find_first_of("\n\r\x1b") == std::string::npos);
}

const std::string plate_text = "[outline]\nkind = \"ellipse\"\nlength = 350\nwidth = 200\n";

} // namespace

TEST_CASE("a value cut short before a line break")
{
  check_one_line(
      error_of([]
               { static_cast<void>(DesignDocument::from_text(plate_text + "mirror = f\ngrams = 5\n", "top.toml")); }),
      "top.toml:5: not valid TOML");
}

TEST_CASE("a line break in the table of an override")
{
  DesignDocument document = DesignDocument::from_text(plate_text, "top.toml");
  check_one_line(error_of([&] { document.set(std::string("outlinehen.l\n\0", 14), "340"); }), "--set: outlinehen.l");
}
