// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/mesh/shell_mesh.h>

#include <Eigen/Core>

namespace plate
{

/// Space between two surfaces over one planform: plain data.
///
/// The axes are those of the body, z from the back to the top.
struct CavityMesh
{
  ShellMesh planform;   ///< triangles seen from above, edges in `boundary`; x and y of its nodes count alone
  Eigen::VectorXd back; ///< z of the inside of the back at the nodes, (num_nodes) [m]
  Eigen::VectorXd top;  ///< z of the inside of the top at the nodes, (num_nodes); on the back or above it [m]
};

/// Checks sizes and heights.
///
/// @throws InvalidInput if sizes differ, a height is negative or there is no space at all
void check_cavity(const CavityMesh& mesh);

/// Cavity between the inner faces of two plates over a planform that has no holes.
///
/// Heights are read half a thickness inside the mid-surfaces. Nodes in a hole of a plate or beside it take the mean
/// height of their neighbours.
/// @param planform  of the space: the inside of the ribs
/// @param top       mid-surface and thickness in the axes of the body, normals up or down
/// @param back      the same
/// @throws InvalidInput as check_cavity(), or if a plate lies over no node of the planform
/// @source pinned by tests/unit/air/cavity_mesh_test.cpp
[[nodiscard]] CavityMesh cavity_between(ShellMesh planform, const ShellMesh& top, const ShellMesh& back);

} // namespace plate
