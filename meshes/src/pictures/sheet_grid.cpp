// SPDX-License-Identifier: MPL-2.0
#include "sheet_grid.h"

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

// Picture units.
constexpr double sheet_width = 780.0; // with margins a PNG of about 1600 pixels
constexpr double highest_plate = 250.0;
constexpr double wanted_aspect = 1.3; // width over height, as a screen or a landscape page
constexpr double cost_of_gaps = 1.5;  // of a sheet all empty, against a factor e from the wanted aspect

SheetGrid grid_of(std::size_t count, std::size_t columns, const SheetCell& cell)
{
  const double widest = sheet_width / static_cast<double>(columns);
  const double height = std::min(highest_plate, (widest - cell.around[0]) / (cell.plates * cell.aspect));
  SheetGrid grid{
      .columns = columns, .rows = (count + columns - 1) / columns, .plate = {height * cell.aspect, height}, .cell = {}};
  const double width = cell.plates * grid.plate[0] + cell.around[0];
  grid.cell = {std::max(width, cell.least_width), height + cell.around[1]};
  return grid;
}

/// How far a grid is from what is wanted.
double cost(const SheetGrid& grid, std::size_t count)
{
  const double places = static_cast<double>(grid.columns * grid.rows);
  const double gaps = 1.0 - static_cast<double>(count) / places;
  const Eigen::Vector2d size = grid.size();
  return std::abs(std::log(size[0] / size[1] / wanted_aspect)) + cost_of_gaps * gaps;
}

} // namespace

SheetGrid fit_grid(std::size_t count, const SheetCell& cell)
{
  const double narrowest = std::max(cell.least_width, 1.5 * cell.around[0]);
  SheetGrid best = grid_of(count, 1, cell);
  for (std::size_t columns = 2; columns <= count && static_cast<double>(columns) * narrowest <= sheet_width; ++columns)
    if (const SheetGrid grid = grid_of(count, columns, cell); cost(grid, count) < cost(best, count))
      best = grid;
  return best;
}

} // namespace plate
