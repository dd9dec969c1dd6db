// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/air/hole_flow.h>

#include <vector>

namespace plate
{

/// A small square of a hole with the charge it carries for a unit of its cell.
struct ChargePoint
{
  Eigen::Vector2d at;
  double charge; ///< of one cell the sum is 1 [-]
  double size;   ///< side of a square of the same area [m]
};

/// A cell: a square of the grid as far as it lies in the hole.
struct HoleCell
{
  std::vector<ChargePoint> points;
  Eigen::Vector2d centre; ///< of the charge [m]
  Eigen::Matrix2d spread; ///< second moments of the charge about it [m2]
  double area;            ///< [m2]
  double size;            ///< side of the square [m]
};

/// Cells of a hole, those with points.
///
/// Charge within a cell goes with one over the square root of the distance from the outline, as it does at every
/// smooth edge.
[[nodiscard]] std::vector<HoleCell> cells_of(const HoleOutline& hole, int cells_across);

/// Energy of two cells: sum over pairs of charges of 1/r, the same cell twice included [1/m].
[[nodiscard]] double inverse_distance(const HoleCell& a, const HoleCell& b);

} // namespace plate
