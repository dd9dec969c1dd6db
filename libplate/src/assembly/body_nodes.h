// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/body.h>

#include <vector>

namespace plate
{

/// A place of a body: a node of one part, or those of a joint.
struct BodyNode
{
  std::vector<PartNode> members;
  Eigen::Vector3d position = Eigen::Vector3d::Zero();      ///< in the axes of the body [m]
  Eigen::Matrix3d rotation_axes = Eigen::Matrix3d::Zero(); ///< columns; the first num_rotations are used [-]
  int num_rotations = 2;

  [[nodiscard]] int num_unknowns() const { return 3 + num_rotations; }
};

/// All places of a body, and where the nodes of the parts are among them.
struct BodyNodes
{
  std::vector<BodyNode> nodes;
  std::vector<std::vector<int>> of_part; ///< per part and node: index into nodes
};

/// Checks joints and finds the places with their rotations.
///
/// @throws InvalidInput as assemble(const Body&)
[[nodiscard]] BodyNodes body_nodes(const Body& body);

/// Unknowns of a part's node from those of its place, (5, num_unknowns()).
using MemberRows = Eigen::Matrix<double, DofMap::dofs_per_node, Eigen::Dynamic, 0, DofMap::dofs_per_node, 6>;
[[nodiscard]] MemberRows member_rows(const BodyPart& part, int node, const BodyNode& place);

/// Numbers the unknowns of the places.
///
/// @param parts  unknowns of each part's own model
[[nodiscard]] DofMap number_unknowns(const Body& body, const BodyNodes& nodes, const std::vector<DofMap>& parts);

/// Unknowns of a place in the order of its rows: displacements, rotations; DofMap::held where held.
[[nodiscard]] std::vector<int> equations_at(const DofMap& dofs, const BodyNode& place, int node);

/// Rigid motions that the supports allow, (num_equations, 0...6).
[[nodiscard]] Eigen::MatrixXd rigid_motions(const BodyNodes& nodes, const DofMap& dofs);

} // namespace plate
