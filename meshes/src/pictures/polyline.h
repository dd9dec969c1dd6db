// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>

#include <vector>

namespace plate
{

/// A chain of points in the plane; a closed one does not repeat its first point.
struct Polyline
{
  std::vector<Eigen::Vector2d> points; ///< [m] in the plate's plane, or picture units
  bool closed = false;
};

/// Length, the closing piece included [unit of the points].
[[nodiscard]] double length(const Polyline& line);

/// Points at equal steps along a line, from its first one on; a closed line ends near its beginning.
[[nodiscard]] std::vector<Eigen::Vector2d> walked(const Polyline& line, double step);

/// Leaves out points that lie within a tolerance of the line without them (Douglas and Peucker 1973).
[[nodiscard]] Polyline simplified(const Polyline& line, double tolerance);

} // namespace plate
