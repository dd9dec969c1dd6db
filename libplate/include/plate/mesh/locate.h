// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/mesh/shell_mesh.h>

#include <optional>

namespace plate
{

/// A place in a mesh.
struct MeshPoint
{
  std::size_t triangle;
  double xi;  ///< natural coordinates in the triangle [-]
  double eta; ///< [-]
};

/// Triangle and natural coordinates over a point of the planform.
///
/// A point within a thousandth of a triangle's size beside the mesh counts as on its edge; nothing for points further
/// out or in a hole. Cost: linear in the number of triangles.
[[nodiscard]] std::optional<MeshPoint> locate(const ShellMesh& mesh, const Eigen::Vector2d& point);

} // namespace plate
