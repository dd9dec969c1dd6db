// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>

#include <cstddef>

namespace plate
{

/// What the cells of a sheet have in common.
struct SheetCell
{
  double plates = 1.0;      ///< side by side in a cell
  double aspect = 0.6;      ///< width over height of a plate
  Eigen::Vector2d around;   ///< what a cell adds to the width and height of its plates, picture units
  double least_width = 0.0; ///< of a cell, so that its words fit, picture units
};

/// Columns and rows of a sheet that is about as wide as others and neither too high nor too low.
struct SheetGrid
{
  std::size_t columns = 1;
  std::size_t rows = 1;
  Eigen::Vector2d plate; ///< box of one plate, picture units
  Eigen::Vector2d cell;  ///< picture units

  [[nodiscard]] Eigen::Vector2d size() const
  {
    return {static_cast<double>(columns) * cell[0], static_cast<double>(rows) * cell[1]};
  }
  /// Top left of a cell, from that of the grid.
  [[nodiscard]] Eigen::Vector2d corner(std::size_t index) const
  {
    const std::size_t row = index / columns;
    return {static_cast<double>(index - row * columns) * cell[0], static_cast<double>(row) * cell[1]};
  }
};

/// Best grid for a count of cells, at least one.
[[nodiscard]] SheetGrid fit_grid(std::size_t count, const SheetCell& cell);

} // namespace plate
