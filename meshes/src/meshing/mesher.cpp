// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/mesher.h>

#include "bar_grid.h"
#include "boundary_stations.h"
#include "corner_mesh.h"
#include "crossing_edges.h"
#include "gmsh_fill.h"
#include "mesh_checks.h"
#include "mesh_options.h"
#include "move_inside.h"
#include "region_lines.h"

#include <plate/core/error.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace plate
{

namespace
{

// Edge groups with their names; the sides of a rectangle are groups of their own.
void name_boundary(PlanformMesh& mesh, const PlateGeometry& geometry, const PlateBoundary& boundary)
{
  for (std::size_t l = 0; l < boundary.names.size(); ++l)
    mesh.boundary[l].name = boundary.names[l];
  if (!std::holds_alternative<RectangleOutline>(geometry.outline))
    return;
  constexpr std::array sides{"y-", "x+", "y+", "x-"}; // in the order of the loop
  std::vector<EdgeGroup> groups;
  for (const char* side : sides)
    groups.push_back({side, {}});
  for (std::size_t i = 0; i < mesh.stations[0].size(); ++i)
    groups[static_cast<std::size_t>(mesh.stations[0][i].piece)].edges.push_back(mesh.boundary[0].edges[i]);
  groups.insert(groups.end(), mesh.boundary.begin() + 1, mesh.boundary.end());
  mesh.boundary = std::move(groups);
}

// From the corner mesh to the cubic one.
void finish(const CornerMesh& corners, const PlateGeometry& geometry, const PlateBoundary& boundary, PlanformMesh& mesh)
{
  mesh.outline_kind = geometry.outline.index();
  mesh.boundary.resize(boundary.loops.size());
  raise_to_cubic(corners, mesh);
  name_boundary(mesh, geometry, boundary);
  if (geometry.bar)
    mesh.bars.push_back(bar_footprint(*geometry.bar, mesh, corners.bar_triangles));
}

// A mesh not yet checked, or none, and where edges must be shorter for it to be right.
struct Attempt
{
  PlanformMesh mesh;
  std::vector<FinerPlace> faults;
};

Attempt mesh_once(const PlateGeometry& geometry, const MeshOptions& options,
                  const std::vector<BoundaryStation>& outline, const std::vector<std::vector<FinerPlace>>& finer)
{
  PlanformMesh mesh;
  mesh.options = options;
  const PlateBoundary boundary = boundary_of(geometry);
  const EdgeDistance edges(geometry, boundary);
  const FullStripWidth full(geometry, options);
  const std::vector<BoundarySample> samples = sample_boundary(boundary, edges, options.size, finer);
  mesh.stations = place_stations(boundary, samples);
  set_strips(mesh.stations, boundary, edges, full);
  if (!outline.empty())
    mesh.stations.front() = outline;

  CornerMesh corners = strip_mesh(mesh.stations, boundary_nodes(mesh.stations, boundary, full), boundary);
  if (geometry.bar)
  {
    mesh.bar_rows.push_back(place_bar_rows(*geometry.bar, samples, options.size));
    add_bar(*geometry.bar, mesh.bar_rows.front(), corners);
  }
  add_region_lines(geometry.patches, samples, options.size, corners);
  if (std::vector<FinerPlace> crossings = crossing_edges(corners); !crossings.empty())
    return {.mesh = {}, .faults = std::move(crossings)};
  fill(corners, options.size);
  finish(corners, geometry, boundary, mesh);
  std::vector<FinerPlace> faults = inside_out_places(mesh);
  return {.mesh = std::move(mesh), .faults = std::move(faults)};
}

// A mesh can follow a change of measures, not of what there is.
void check_same_kind(const PlanformMesh& mesh, const PlateGeometry& changed, const PlateBoundary& boundary)
{
  const auto fits = [&]
  {
    if (changed.outline.index() != mesh.outline_kind || boundary.loops.size() != mesh.stations.size() ||
        changed.bar.has_value() != !mesh.bar_rows.empty())
      return false;
    for (std::size_t l = 0; l < boundary.loops.size(); ++l)
      if (mesh.stations[l].empty() ||
          boundary.loops[l].pieces.size() != static_cast<std::size_t>(mesh.stations[l].back().piece) + 1)
        return false;
    return true;
  };
  if (!fits())
    throw InvalidInput("move_planform: the changed plate has other holes, another kind of outline or another bar; "
                       "mesh it anew");
}

} // namespace

PlanformMesh mesh_planform(const PlateGeometry& geometry, const MeshOptions& options)
{
  return mesh_planform(geometry, options, {});
}

PlanformMesh mesh_planform(const PlateGeometry& geometry, const MeshOptions& options,
                           const std::vector<BoundaryStation>& outline)
{
  check_geometry(geometry);
  const MeshOptions full_options = with_defaults(options, geometry);
  // Edges that are long for the bend or for a thin strip cross others or turn a cubic triangle inside out: there they
  // are halved.
  constexpr int most_attempts = 8;
  std::vector<std::vector<FinerPlace>> finer;
  Attempt attempt = mesh_once(geometry, full_options, outline, finer);
  while (!attempt.faults.empty() && finer.size() + 1 < most_attempts)
  {
    finer.push_back(attempt.faults);
    attempt = mesh_once(geometry, full_options, outline, finer);
  }
  if (attempt.mesh.triangles.empty())
  {
    const Eigen::Vector2d where = attempt.faults.front().position * 1e3;
    throw NumericalFailure(message("mesh: edges cross near x = ", where.x(), ", y = ", where.y(),
                                   " mm, however short they are; ", "try another mesh size"));
  }
  check_mesh(attempt.mesh, geometry);
  return std::move(attempt.mesh);
}

PlanformMesh move_planform(const PlanformMesh& mesh, const PlateGeometry& changed)
{
  check_geometry(changed);
  const PlateBoundary boundary = boundary_of(changed);
  check_same_kind(mesh, changed, boundary);
  PlanformMesh moved;
  moved.options = mesh.options;
  moved.stations = mesh.stations;
  moved.bar_rows = mesh.bar_rows;
  const FullStripWidth full(changed, mesh.options);
  CornerMesh corners = strip_mesh(moved.stations, boundary_nodes(moved.stations, boundary, full), boundary);
  if (changed.bar)
    add_bar(*changed.bar, moved.bar_rows.front(), corners);
  move_inside(mesh, corners);
  finish(corners, changed, boundary, moved);
  check_mesh(moved, changed);
  return moved;
}

} // namespace plate
