// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/air/cavity_space.h>

#include <Eigen/Core>
#include <Eigen/Geometry>

namespace plate
{

/// Where a wall bounds the cavity.
enum class WallSide
{
  top,  ///< above: what lies over the planform counts, not the overhang
  back, ///< below, the same
  ribs  ///< around: each point acts on the nearest point of the planform's edge
};

/// A wall of a cavity.
struct CavityWall
{
  const ShellMesh* mesh; ///< in axes of its own; must outlive its use
  WallSide side;
  double outward = 1.0; ///< 1 where the normals of ribs point out of the cavity, -1 into it; top and back do not care
  Eigen::Isometry3d placement = Eigen::Isometry3d::Identity(); ///< from the axes of the mesh to those of the cavity [m]
};

/// Flow that motions of a wall draw from the cavity: what the pressures of the space do on the wall.
///
/// loads(i, j) is the integral of (pressure i)(displacement j along the outward normal) over the wall, as for a wall at
/// the boundary of the air. A top and a back that move up together, in one piece with the ribs, displace no volume.
/// Holes of a plate do not move with it.
/// @param u  displacements of the wall's nodes in the axes of its mesh, (3 num_nodes, n): x, y, z of the first node,
///           then of the next
/// @return (num_unknowns, n) [m2 times the unit of u]
/// @throws InvalidInput if the sizes differ or a rib lies far from the edge of the planform
/// @source pinned by tests/unit/air/cavity_walls_test.cpp
[[nodiscard]] Eigen::MatrixXd wall_flow(const CavitySpace& space, const CavityWall& wall, const Eigen::MatrixXd& u);

/// Forces of pressures in the cavity on the nodes of a wall: the transpose of wall_flow().
///
/// @param pressures  (num_unknowns, n) [Pa]
/// @return (3 num_nodes, n), in the axes and order of the displacements that wall_flow() takes [N]
/// @throws InvalidInput as wall_flow()
/// @source pinned by tests/unit/air/cavity_walls_test.cpp
[[nodiscard]] Eigen::MatrixXd wall_forces(const CavitySpace& space, const CavityWall& wall,
                                          const Eigen::MatrixXd& pressures);

} // namespace plate
