// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/core/units.h>

#include <Eigen/Core>

#include <span>
#include <variant>
#include <vector>

namespace plate
{

/// An ellipse in the planform.
struct EllipseRegion
{
  Eigen::Vector2d centre; ///< [m]
  Eigen::Vector2d axes;   ///< full lengths of its axes, the first along x before it is turned [m]
  Angle angle = {};       ///< turns it, positive from x to y
};

/// A polygon in the planform.
struct PolygonRegion
{
  std::vector<Eigen::Vector2d> points; ///< corners in order, at least 3, either sense [m]
};

/// Part of the plate as seen from outside.
using PlanformRegion = std::variant<EllipseRegion, PolygonRegion>;

/// Whether a point lies inside a closed polygon (even-odd rule).
[[nodiscard]] bool polygon_contains(std::span<const Eigen::Vector2d> polygon, const Eigen::Vector2d& point);

/// Whether a point lies in the region (polygons: even-odd rule).
[[nodiscard]] bool contains(const PlanformRegion& region, const Eigen::Vector2d& point);

/// Area [m2].
[[nodiscard]] double region_area(const PlanformRegion& region);

/// Closed polyline along the edge without its first point repeated: corners of a polygon, 360 points of an ellipse [m].
[[nodiscard]] std::vector<Eigen::Vector2d> edge_of(const PlanformRegion& region);

/// Checks measures and points.
///
/// @throws InvalidInput if a number is not finite, an axis is not positive, a polygon has fewer than three corners, has
///   no area or crosses itself
void check_region(const PlanformRegion& region);

} // namespace plate
