// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>

#include <span>
#include <string>
#include <vector>

namespace plate
{

inline constexpr std::size_t most_points = 200000; ///< of a fit: more than any scan of a plate needs

/// Box of a set of points.
struct Box
{
  Eigen::Vector2d low;  ///< [m]
  Eigen::Vector2d high; ///< [m]

  [[nodiscard]] bool contains(const Eigen::Vector2d& p) const
  {
    return (p.array() >= low.array()).all() && (p.array() <= high.array()).all();
  }
  [[nodiscard]] double diagonal() const { return (high - low).norm(); } ///< [m]
};

[[nodiscard]] Box box_of(std::span<const Eigen::Vector2d> points);

/// Sum of the products of the points' distances from their mean [m2].
[[nodiscard]] Eigen::Matrix2d scatter_of(std::span<const Eigen::Vector2d> points);

/// Points of a grid of a hundredth of its box inside a closed polygon, and its corners [m].
[[nodiscard]] std::vector<Eigen::Vector2d> grid_inside(std::span<const Eigen::Vector2d> polygon);

/// "x = 12.5, y = -3 mm", for messages.
[[nodiscard]] std::string place_in_mm(const Eigen::Vector2d& point);

/// @throws InvalidInput if there are fewer than `least` points, too many, one is not finite, or all lie in one line
void check_points(std::span<const Eigen::Vector2d> points, std::size_t least);

/// Makes sure that few places of a region are far from every point.
///
/// @param region  closed polygon
/// @throws InvalidInput naming the share without points and the middle of the largest gap
void check_coverage(std::span<const Eigen::Vector2d> points, std::span<const Eigen::Vector2d> region);

} // namespace plate
