// SPDX-License-Identifier: MPL-2.0
// KEY=VALUE as after --set, on a plate that has one of everything.
#include "one_line.h"

#include <plate/design/design.h>
#include <plate/design/design_document.h>

#include <cstdint>

namespace
{

const plate::DesignDocument& plate_with_everything()
{
  static const plate::DesignDocument document = plate::DesignDocument::from_text(
      "title = \"fuzz\"\n[outline]\nkind = \"ellipse\"\nlength = 350\nwidth = 200\n"
      "[arching]\nkind = \"elliptic\"\nheight = 10\n"
      "[[soundhole]]\nkind = \"slot\"\ncentre = [0, 50]\nlength = 60\nwidth = 5\n"
      "[bar]\nmaterial = \"spruce\"\nlength = 200\nwidth = 6\nheight = 9\noffset = 20\n"
      "[layup]\ncode = \"[0/90]s\"\nply = { material = \"carbon_ud\", thickness = 0.5 }\n",
      "fuzz.toml");
  return document;
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const std::size_t equals = text.find('=');
  if (equals == std::string_view::npos)
    return -1; // the command line refuses it before any key is looked up
  plate::fuzz::refused_in_one_line(
      [&]
      {
        plate::DesignDocument document = plate_with_everything();
        document.set(text.substr(0, equals), text.substr(equals + 1));
        static_cast<void>(document.design());
      });
  return 0;
}
