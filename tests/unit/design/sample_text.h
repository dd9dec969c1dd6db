// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/design/design.h>
#include <plate/design/design_document.h>
#include <plate/design/design_error.h>

#include <doctest/doctest.h>

#include <initializer_list>
#include <string>
#include <string_view>

namespace plate::test
{

/// The smallest design: a flat plate of spruce, 350 x 200 x 2.5 mm. Lines 1 to 8.
inline const std::string small_plate = "[outline]\n"
                                       "kind = \"rectangle\"\n"
                                       "length = 350\n"
                                       "width = 200\n"
                                       "[thickness]\n"
                                       "value = 2.5\n"
                                       "[layup]\n"
                                       "solid = \"spruce\"\n";

/// A laminated plate without layup; it is appended.
inline const std::string bare_plate = "[outline]\n"
                                      "kind = \"rectangle\"\n"
                                      "length = 350\n"
                                      "width = 200\n";

inline Design read(const std::string& text)
{
  return DesignDocument::from_text(text, "top.toml").design();
}

/// What reading the text complains of; "no error" if it does not.
inline std::string error_of(const std::string& text)
{
  try
  {
    static_cast<void>(read(text));
  }
  catch (const DesignError& error)
  {
    return error.what();
  }
  return "no error";
}

/// Checks that a message begins as given and holds all the parts.
inline void check_message(const std::string& text, std::string_view begin,
                          std::initializer_list<std::string_view> parts)
{
  CAPTURE(text);
  CAPTURE(begin);
  CHECK(text.rfind(begin, 0) == 0);
  for (const std::string_view part : parts)
  {
    CAPTURE(part);
    CHECK(text.find(part) != std::string::npos);
  }
  CHECK(text.find('\n') == std::string::npos);
}

} // namespace plate::test
