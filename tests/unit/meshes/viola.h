// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/plate_geometry.h>

#include <vector>

namespace plate::test
{

/// An invented viola: usual measures of the trade (common practice, no source).
inline BoutsOutline viola_outline()
{
  return {.length = 0.405, .lower_bout = 0.236, .centre_bout = 0.131, .upper_bout = 0.193};
}

inline PlateGeometry viola_top()
{
  return {.outline = viola_outline(),
          .arching = CycloidArching{.height = 0.0125},
          .thickness = UniformThickness{.value = 0.0028},
          .soundholes = {FHole{.length = 0.080}},
          .bar = BarFootprintShape{.centre = 0.0, .offset = 0.018, .length = 0.310, .width = 0.0055}};
}

/// Closed curve of straight lines.
inline CurveLoop polygon(const std::vector<Eigen::Vector2d>& points)
{
  CurveLoop loop;
  for (std::size_t i = 0; i < points.size(); ++i)
    loop.pieces.push_back(line(points[i], points[(i + 1) % points.size()]));
  return loop;
}

} // namespace plate::test
