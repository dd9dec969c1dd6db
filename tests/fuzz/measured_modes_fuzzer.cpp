// SPDX-License-Identifier: MPL-2.0
// A list of measured modes, as a table and as TOML.
#include "one_line.h"

#include <plate/design/measured_modes.h>

#include <cstdint>
#include <string>

namespace
{

void read(std::string_view text, const std::string& name)
{
  const plate::MeasuredModes measured = plate::parse_measured_modes(text, name);
  if (measured.modes.empty())
    std::abort();
  for (const plate::MeasuredMode& mode : measured.modes)
    if (!(mode.frequency_hz > 0.0) || measured.with_shapes == mode.places.empty())
      std::abort();
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  plate::fuzz::refused_in_one_line([&] { read(text, "fuzz.csv"); });
  plate::fuzz::refused_in_one_line([&] { read(text, "fuzz.toml"); });
  return 0;
}
