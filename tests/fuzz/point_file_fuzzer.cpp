// SPDX-License-Identifier: MPL-2.0
// A file of measured points, with two columns and with three of which one may be left out.
#include "one_line.h"

#include "point_file.h"

#include <array>
#include <cmath>
#include <cstdint>

namespace
{

void read(std::string_view text, std::span<const plate::PointColumn> columns)
{
  const plate::PointTable table = plate::read_points(text, "fuzz.csv", columns);
  if (table.rows.empty())
    std::abort();
  for (const plate::PointRow& row : table.rows)
    for (const double value : row.values)
      if (!(std::abs(value) <= 1e5)) // the limit that read_points() declares
        std::abort();
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  constexpr std::array<plate::PointColumn, 2> curve = {{{"x"}, {"y"}}};
  constexpr std::array<plate::PointColumn, 3> surface = {{{"x"}, {"y"}, {"z", false}}};
  plate::fuzz::refused_in_one_line([&] { read(text, curve); });
  plate::fuzz::refused_in_one_line([&] { read(text, surface); });
  return 0;
}
