// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/core/units.h>

#include <Eigen/Core>

#include <array>

namespace plate
{

/// Planform of the strip to which a bass bar is glued.
struct BarFootprintShape
{
  double centre = 0.0; ///< x of its middle [m]
  double offset;       ///< y of its middle, positive to the bass side of a top [m]
  double length;       ///< [m]
  double width;        ///< [m]
  Angle angle = {};    ///< of its axis from the centre line, from x to y
  double apex = 0.0;   ///< distance from its middle along its axis where it is highest: mesh lines cross there [m]
};

/// Unit vector along the bar, towards the neck.
[[nodiscard]] Eigen::Vector2d bar_axis(const BarFootprintShape& bar);

/// Point of the strip: `along` from its middle along the axis, `across` to the bass side of the axis [m].
[[nodiscard]] Eigen::Vector2d bar_point(const BarFootprintShape& bar, double along, double across);

/// The strip's corners, counter-clockwise, starting at the lower end on the treble side [m].
[[nodiscard]] std::array<Eigen::Vector2d, 4> bar_corners(const BarFootprintShape& bar);

} // namespace plate
