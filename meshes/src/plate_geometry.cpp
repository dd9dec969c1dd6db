// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/plate_geometry.h>

#include <plate/core/error.h>

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

double planform_area(const PlateGeometry& geometry)
{
  double area = 0.0; // [m^2]; holes run clockwise and count negative
  for (const CurveLoop& loop : boundary_of(geometry).loops)
    area += enclosed_area(loop);
  return area;
}

} // namespace plate
