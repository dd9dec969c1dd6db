// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>

#include <cstddef>
#include <span>
#include <vector>

namespace plate
{

/// Points along a closed curve, counter-clockwise, none twice in a row, with their places in the list they come from.
struct PointPath
{
  std::vector<Eigen::Vector2d> points; ///< [m]
  std::vector<std::size_t> origin;     ///< of each point

  [[nodiscard]] std::size_t size() const { return points.size(); }
  /// Index counted on from a point, round the curve.
  [[nodiscard]] std::size_t on(std::size_t i, std::ptrdiff_t steps) const;
  /// The same path without the points that are marked.
  [[nodiscard]] PointPath without(const std::vector<char>& marked) const;
};

/// @throws InvalidInput if fewer than 3 different points remain, or they are not in order along a curve
[[nodiscard]] PointPath ordered_path(std::span<const Eigen::Vector2d> points);

} // namespace plate
