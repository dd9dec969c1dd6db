// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/assemble.h>

#include <array>
#include <functional>
#include <string>

namespace plate::validation
{

/// What a support holds at a node that the supports of a model cannot say.
struct Hold
{
  Eigen::Matrix3d axes = Eigen::Matrix3d::Identity(); ///< columns: three directions at right angles
  /// Displacements along these, then turns about the two tangents of the node (first of shell_frame(), then second).
  std::array<bool, DofMap::dofs_per_node> held = {};
};

/// What is held at a node, by its number and position.
using HoldRule = std::function<Hold(std::size_t node, const Eigen::Vector3d& position)>;

/// A system with unknowns held, and the way back to the unknowns of the model.
struct HeldSystem
{
  System system;
  SparseMatrix to_model; ///< (unknowns of the model, unknowns of the system)
};

/// Holds unknowns of a model that has no supports of its own.
[[nodiscard]] HeldSystem held_system(const Model& model, const HoldRule& rule);

/// A matrix of the model, lower triangle, on the unknowns of the system.
[[nodiscard]] SparseMatrix condensed(const HeldSystem& held, const SparseMatrix& lower);

/// Displacements of the nodes under a load, (3, num_nodes) [m].
///
/// @param load  by unknowns of the model [N, N m]
/// @throws NumericalFailure if the supports leave a motion free
[[nodiscard]] Eigen::Matrix3Xd deflection(const HeldSystem& held, const Eigen::VectorXd& load);

/// Load of a force per area on the mid-surface, by unknowns of the model.
///
/// Found through the mass matrix, so the plate must have one density and one thickness, and each area of the
/// surface counts as its volume over the thickness.
/// @param pressure  at a point of the mid-surface [Pa]
[[nodiscard]] Eigen::VectorXd area_load(const Model& model,
                                        const std::function<Eigen::Vector3d(const Eigen::Vector3d&)>& pressure);

/// Load of a force on a node, by unknowns of the model.
void add_force(Eigen::VectorXd& load, std::size_t node, const Eigen::Vector3d& force);

/// The node nearest to a point.
[[nodiscard]] std::size_t node_at(const Model& model, const Eigen::Vector3d& point);

/// Nodes of boundary groups: true for each node on one of them.
[[nodiscard]] std::vector<bool> nodes_of(const ShellMesh& mesh, const std::vector<std::string>& groups);

} // namespace plate::validation
