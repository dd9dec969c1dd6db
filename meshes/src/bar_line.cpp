// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/bar_line.h>

#include <cmath>

namespace plate
{

Eigen::Vector2d bar_axis(const BarFootprintShape& bar)
{
  return {std::cos(bar.angle.in_radians()), std::sin(bar.angle.in_radians())};
}

Eigen::Vector2d bar_point(const BarFootprintShape& bar, double along, double across)
{
  const Eigen::Vector2d axis = bar_axis(bar);
  return Eigen::Vector2d(bar.centre, bar.offset) + along * axis + across * Eigen::Vector2d(-axis.y(), axis.x());
}

std::array<Eigen::Vector2d, 4> bar_corners(const BarFootprintShape& bar)
{
  const double l = 0.5 * bar.length;
  const double w = 0.5 * bar.width;
  return {bar_point(bar, -l, -w), bar_point(bar, l, -w), bar_point(bar, l, w), bar_point(bar, -l, w)};
}

} // namespace plate
