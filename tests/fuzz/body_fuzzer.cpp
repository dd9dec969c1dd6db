// SPDX-License-Identifier: MPL-2.0
// A body file, whose plates may be those of the example: parsed, checked, read into a design.
#include "one_line.h"

#include <plate/design/body_design.h>
#include <plate/design/body_document.h>

#include <cstdint>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const plate::FileAccess access = {.folder = EXAMPLES_DIR "/viola/body"};
  plate::fuzz::refused_in_one_line(
      [&] { static_cast<void>(plate::BodyDocument::from_text(text, "fuzz.toml", access).design()); });
  return 0;
}
