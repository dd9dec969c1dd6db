// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/planform_mesh.h>
#include <plate/meshes/plate_geometry.h>

namespace plate
{

/// How large a mesh will be, before it is made.
struct MeshEstimate
{
  double num_triangles; ///< may be far beyond what an int holds
  double num_nodes;
};

/// Size of the mesh that mesh_planform() would make, from the area over the square of the edge length wanted at each
/// place and the edges along the boundary. Within a quarter of the mesh (pinned by
/// tests/unit/meshes/mesh_estimate_test.cpp); costs milliseconds, whatever the size asked for.
///
/// @throws InvalidInput as mesh_planform()
[[nodiscard]] MeshEstimate estimate_mesh(const PlateGeometry& geometry, const MeshOptions& options = {});

} // namespace plate
