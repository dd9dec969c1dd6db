// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "contour.h"

#include <Eigen/Core>

#include <span>
#include <vector>

namespace plate
{

/// Where a picture of a mode shows a sign.
struct Antinode
{
  Eigen::Vector2d position; ///< in the plate's plane, moved inward where the antinode is on an edge [m]
  double value = 0.0;       ///< of the field at the position [unit of the field]
};

/// Places for signs of a given half-width: the largest displacement of each nodal domain and its further local
/// extrema that are clear ones, none overlapping another, a nodal line or an edge if there is any room.
///
/// @param field      displacement, largest absolute value 1
/// @param half_width of a sign [m]
/// @param taken      places that signs keep clear of, as of lines [m]
[[nodiscard]] std::vector<Antinode> find_antinodes(const ContouredField& field, double half_width,
                                                   std::span<const Eigen::Vector2d> taken = {});

} // namespace plate
