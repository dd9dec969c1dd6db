// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/elements/cubic_triangle.h>
#include <plate/mesh/shell_mesh.h>

#include <cstddef>

namespace plate
{

/// Positions of the nodes of a triangle, (3, 10) [m].
[[nodiscard]] inline Eigen::Matrix<double, 3, CubicTriangle::num_nodes> nodes_of(const ShellMesh& mesh,
                                                                                 std::size_t triangle)
{
  Eigen::Matrix<double, 3, CubicTriangle::num_nodes> nodes;
  for (int i = 0; i < CubicTriangle::num_nodes; ++i)
    nodes.col(i) = mesh.nodes[static_cast<std::size_t>(mesh.triangles[triangle][static_cast<std::size_t>(i)])];
  return nodes;
}

} // namespace plate
