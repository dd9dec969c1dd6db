// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/dof_map.h>
#include <plate/assembly/model.h>

#include <Eigen/Core>

#include <span>
#include <vector>

namespace plate
{

/// Two vectors of unknowns, columns of a matrix; may be the same twice.
struct VectorPair
{
  Eigen::Index first;
  Eigen::Index second;
};

/// How the stiffness K and the mass M of one model differ from those of another, as seen by pairs of vectors of
/// unknowns x, y: x^T (change of K) y and x^T (change of M) y.
struct FormChanges
{
  Eigen::MatrixXd stiffness;     ///< of each triangle, (num_pairs, num_triangles) [N m for vectors in m]
  Eigen::MatrixXd mass;          ///< of each triangle, (num_pairs, num_triangles) [kg m2]
  Eigen::VectorXd triangle_mass; ///< mass of each triangle, (num_triangles) [kg]
  Eigen::VectorXd point_mass;    ///< what point masses add to x^T (change of M) y, (num_pairs) [kg m2]
  double stuck_on = 0.0;         ///< change of the sum of the point masses [kg]
  bool any = false;              ///< some part of the model that stiffness or mass depends on has changed
};

/// Sums over the triangles of two models that share them, from the matrices of the elements, without assembling any.
///
/// Only triangles in which something differs are looked at, so a change of a bar or a patch costs little. Each
/// triangle's matrices are subtracted before they are applied. The same input gives the same bits, whatever
/// num_threads(). The air around a plate (Model::air_density) is not part of it.
/// @param vectors  (num_equations, n), of unknowns that both models share
/// @throws InvalidInput  if the models differ in triangles, in the number of nodes, bars or patches, or in supports, or
///   a point mass lies beside the plate
/// Cost: twice the element matrices of the triangles that differ; 0.2 s for all of a viola top.
/// @source pinned by tests/unit/assembly/form_changes_test.cpp
[[nodiscard]] FormChanges form_changes(const Model& from, const Model& to, const DofMap& dofs,
                                       const Eigen::MatrixXd& vectors, std::span<const VectorPair> pairs);

} // namespace plate
