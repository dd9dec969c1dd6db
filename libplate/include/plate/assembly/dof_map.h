// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/model.h>

#include <Eigen/Core>

#include <array>
#include <vector>

namespace plate
{

/// Numbering of the unknowns: five per node (displacement x, y, z; rotations about t1, t2), held ones left out.
struct DofMap
{
  static constexpr int dofs_per_node = 5;
  static constexpr int held = -1;
  std::vector<std::array<int, dofs_per_node>> equation; ///< per node; `held` where a support holds the unknown
  /// Bodies only: per node a third rotation where walls meet at an angle, else `held`; empty for a plate (see Body).
  std::vector<int> third_rotation = {};
  int num_equations = 0;
};

[[nodiscard]] DofMap number_unknowns(const Model& model);

/// Unknowns of each node, ascending; empty where all are held.
[[nodiscard]] std::vector<std::vector<int>> unknowns_by_node(const DofMap& dofs);

/// Displacements of all nodes from a vector of unknowns, (3, num_nodes); held ones are zero [m].
[[nodiscard]] Eigen::Matrix3Xd nodal_displacements(const DofMap& dofs, const Eigen::Ref<const Eigen::VectorXd>& x);

/// Rigid motions the supports allow, as vectors of unknowns: (num_equations, 0...6), columns not orthogonal.
[[nodiscard]] Eigen::MatrixXd rigid_motions(const Model& model, const DofMap& dofs);

} // namespace plate
