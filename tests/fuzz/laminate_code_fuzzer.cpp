// SPDX-License-Identifier: MPL-2.0
// A laminate code; what it expands to must keep to the declared limit.
#include "one_line.h"

#include <plate/laminates/laminate_code.h>

#include <cmath>
#include <cstdint>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
  const std::string_view code(reinterpret_cast<const char*>(data), size);
  plate::fuzz::refused_in_one_line(
      [&]
      {
        const std::vector<plate::CodePly> plies = plate::parse_laminate_code(code);
        if (plies.empty() || plies.size() > plate::max_code_plies)
          std::abort();
        for (const plate::CodePly& ply : plies)
          if (!(std::abs(ply.angle.in_degrees()) <= 360.001))
            std::abort();
      });
  return 0;
}
