// SPDX-License-Identifier: MPL-2.0
#include "frame.h"

namespace plate
{

std::vector<Polyline> on_page(const Frame& frame, std::span<const Polyline> lines)
{
  constexpr double tolerance = 0.04; // picture units; a twelfth of a pixel of the PNG
  std::vector<Polyline> result;
  for (const Polyline& line : lines)
  {
    Polyline moved{.points = {}, .closed = line.closed};
    for (const Eigen::Vector2d& point : line.points)
      moved.points.push_back(frame.on_page(point));
    result.push_back(simplified(moved, tolerance));
  }
  return result;
}

} // namespace plate
