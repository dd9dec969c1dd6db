// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>

#include <vector>

namespace plate
{

/// On which side of the line from a to b the point c lies: 1 left, -1 right, 0 on it. Right to the last bit.
///
/// A filter with an error bound decides nearly always; what it leaves open is summed exactly. Coordinates whose
/// products would underflow (below 1e-145 of a metre) are outside its reach.
/// @source [Shewchuk1997] sec. 4.3 (bound of the filter), sec. 2 (exact sums); pinned by
/// tests/unit/meshes/exact_predicates_test.cpp
[[nodiscard]] int orientation(const Eigen::Vector2d& a, const Eigen::Vector2d& b, const Eigen::Vector2d& c);

/// What two straight segments have in common.
enum class Meeting
{
  none,
  touching, ///< an end of one lies on the other, or they overlap
  crossing  ///< one inner point of both
};

[[nodiscard]] Meeting meeting(const Eigen::Vector2d& a, const Eigen::Vector2d& b, const Eigen::Vector2d& c,
                              const Eigen::Vector2d& d);

/// Whether a closed polygon holds a point (even-odd rule). A point on the polygon itself counts as in or out in such a
/// way that of two polygons with a common side exactly one holds it.
[[nodiscard]] bool contains(const std::vector<Eigen::Vector2d>& polygon, const Eigen::Vector2d& p);

} // namespace plate
