// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/mesh_estimate.h>

#include "boundary_sampling.h"
#include "exact_predicates.h"
#include "mesh_options.h"

#include <algorithm>
#include <iterator>
#include <vector>

namespace plate
{
namespace
{

using Eigen::Vector2d;

constexpr double equilateral = 0.4330127018922193; // area of the triangle of unit edge, sqrt(3)/4
constexpr double crowding = 0.95; // triangles found over equilateral ones of the edge length wanted; measured
constexpr int columns = 96;       // of sampling points over the length of the plate

/// Whether a point lies in the plate: in the outline and in no hole.
bool in_plate(const std::vector<std::vector<Vector2d>>& polygons, const Vector2d& p)
{
  return contains(polygons.front(), p) &&
         std::none_of(polygons.begin() + 1, polygons.end(), [&](const auto& hole) { return contains(hole, p); });
}

/// Area over the square of the edge length wanted [-].
double area_in_edges(const PlateGeometry& geometry, const PlateBoundary& boundary,
                     const std::vector<BoundarySample>& samples, double size)
{
  std::vector<BoundarySample> finer;
  std::copy_if(samples.begin(), samples.end(), std::back_inserter(finer),
               [&](const BoundarySample& s) { return s.size < 0.999 * size; });
  std::vector<std::vector<Vector2d>> polygons;
  for (const CurveLoop& loop : boundary.loops)
    polygons.push_back(sample(loop, 8));
  const double step = outline_length(geometry.outline) / columns;
  const int rows = std::max(4, static_cast<int>(outline_width(geometry.outline) / step));
  double sum = 0.0;
  int inside = 0;
  for (int i = 0; i < columns; ++i)
    for (int j = 0; j < rows; ++j)
    {
      const Vector2d p(step * (i + 0.5 - 0.5 * columns), outline_width(geometry.outline) * ((j + 0.5) / rows - 0.5));
      if (!in_plate(polygons, p))
        continue;
      ++inside;
      const double wanted = size_at(finer, p, size);
      sum += 1.0 / (wanted * wanted);
    }
  return inside > 0 ? planform_area(geometry) * sum / inside : 0.0;
}

} // namespace

MeshEstimate estimate_mesh(const PlateGeometry& geometry, const MeshOptions& options)
{
  check_geometry(geometry);
  const double size = with_defaults(options, geometry).size;
  const PlateBoundary boundary = boundary_of(geometry);
  const std::vector<BoundarySample> samples = sample_boundary(boundary, EdgeDistance(geometry, boundary), size);
  double boundary_edges = 0.0;
  for (const BoundarySample& s : samples)
    boundary_edges += s.step / s.size;
  // Each boundary edge carries two triangles in its strip, too narrow to count in the area.
  const double inner = crowding / equilateral * area_in_edges(geometry, boundary, samples, size);
  const double triangles = inner + 2.0 * boundary_edges;
  // Euler's formula: corners, two nodes on each edge, one in each triangle.
  return {.num_triangles = triangles, .num_nodes = 4.5 * triangles + 1.5 * boundary_edges};
}

} // namespace plate
