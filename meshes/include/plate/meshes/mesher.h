// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/planform_mesh.h>
#include <plate/meshes/plate_geometry.h>

namespace plate
{

/// Meshes the planform of a plate: strips along the free edges, mesh lines along and across the bar, cubic edges on the
/// true curves. The same input gives the same mesh, bit for bit. One mesh at a time is made, whatever the thread.
///
/// @throws InvalidInput if check_geometry() does, or an option is negative or not finite
/// @throws NumericalFailure if the mesh found does not cover the plate or holds a triangle inside out
[[nodiscard]] PlanformMesh mesh_planform(const PlateGeometry& geometry, const MeshOptions& options = {});

/// The same with corner nodes and strips along the outline as given, e.g. as on the plate across the ribs.
///
/// @param outline  every joint of the outline's pieces among them, in its order
[[nodiscard]] PlanformMesh mesh_planform(const PlateGeometry& geometry, const MeshOptions& options,
                                         const std::vector<BoundaryStation>& outline);

/// The same mesh moved smoothly to a changed geometry: same nodes and triangles, so that a small change of the geometry
/// is a small change of every result.
///
/// @param changed  with the same holes, pieces and bar as the geometry `mesh` was made of
/// @throws InvalidInput if check_geometry() does, or the kinds of curves differ
/// @throws NumericalFailure if a triangle turns inside out: the change is too great, mesh anew
[[nodiscard]] PlanformMesh move_planform(const PlanformMesh& mesh, const PlateGeometry& changed);

/// The shell mesh over a planform: heights and normals of the arch, thickness of the map.
[[nodiscard]] ShellMesh lift(const PlanformMesh& mesh, const PlateGeometry& geometry);

} // namespace plate
