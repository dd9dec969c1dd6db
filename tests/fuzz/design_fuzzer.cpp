// SPDX-License-Identifier: MPL-2.0
// A design file: parsed, checked, read into a design, its geometry checked; everything short of meshing.
#include "one_line.h"

#include <plate/design/design.h>
#include <plate/design/design_document.h>

#include <cstdint>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  plate::fuzz::refused_in_one_line(
      [&] { static_cast<void>(plate::DesignDocument::from_text(text, "fuzz.toml").design()); });
  return 0;
}
