// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/plate_geometry.h>

#include <plate/core/error.h>

#include <algorithm>

namespace plate
{

PlateBoundary boundary_of(const PlateGeometry& geometry)
{
  PlateBoundary boundary;
  boundary.loops.push_back(outline_loop(geometry.outline));
  boundary.names.emplace_back("outline");
  for (std::size_t i = 0; i < geometry.soundholes.size(); ++i)
    for (CurveLoop& loop : soundhole_loops(geometry.soundholes[i], geometry.outline))
    {
      boundary.loops.push_back(std::move(loop));
      boundary.names.push_back(message("hole ", boundary.loops.size() - 1));
      boundary.soundholes.push_back(i);
    }
  return boundary;
}

PlanformCover::PlanformCover(const PlateGeometry& geometry)
{
  constexpr int chords = 64;
  for (const CurveLoop& loop : boundary_of(geometry).loops)
    loops_.push_back({sample(loop, chords)});
}

bool PlanformCover::contains(const Eigen::Vector2d& point) const
{
  const auto holds = [&](const PolygonRegion& loop) { return plate::contains(loop, point); };
  return holds(loops_.front()) && std::none_of(loops_.begin() + 1, loops_.end(), holds);
}

double planform_area(const PlateGeometry& geometry)
{
  double area = 0.0; // [m^2]; holes run clockwise and count negative
  for (const CurveLoop& loop : boundary_of(geometry).loops)
    area += enclosed_area(loop);
  return area;
}

} // namespace plate
