// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/assemble.h>

#include <Eigen/Core>
#include <Eigen/SparseCore>

namespace plate
{

/// Values of the five unknowns of every node, held ones too: displacements and rotations, or forces and moments that
/// work on them, (5, num_nodes).
using NodalUnknowns = Eigen::Matrix<double, DofMap::dofs_per_node, Eigen::Dynamic>;

/// From a vector of unknowns; held ones are zero.
[[nodiscard]] NodalUnknowns at_nodes(const DofMap& dofs, const Eigen::Ref<const Eigen::VectorXd>& x);

/// The part that works on unknowns that are not held, as a vector.
[[nodiscard]] Eigen::VectorXd on_unknowns(const DofMap& dofs, const NodalUnknowns& values);

/// The part that works on unknowns that are held.
[[nodiscard]] NodalUnknowns on_held(const DofMap& dofs, const NodalUnknowns& values);

/// Those of one triangle.
[[nodiscard]] Eigen::Matrix<double, ShellTriangle::num_dofs, 1>
of_triangle(const ShellMesh& mesh, const NodalUnknowns& values, std::size_t triangle);

/// The same from vectors of unknowns, (num_equations, n): zero where held, (50, n).
[[nodiscard]] ShellTriangle::Displacements of_triangle(const ShellMesh& mesh, const DofMap& dofs,
                                                       const Eigen::MatrixXd& vectors, std::size_t triangle);

/// What the unknowns add to the displacement (x, y, z) of the mid-surface at a place of the planform [m]:
/// (3, num_equations), its product with vectors of unknowns is their displacement there.
///
/// @throws InvalidInput if the place lies beside the plate or in a hole
[[nodiscard]] Eigen::SparseMatrix<double, Eigen::RowMajor> displacement_rows(const Model& model, const DofMap& dofs,
                                                                             const Eigen::Vector2d& place);

/// Force and moment about the origin of nodal forces [N, N m].
[[nodiscard]] Eigen::Matrix<double, 6, 1> resultant(const Model& model, const NodalUnknowns& forces);

/// Forces of the elements on nodes with held unknowns when they are displaced, K u there; zero at all other nodes.
[[nodiscard]] NodalUnknowns held_elastic_forces(const Model& model, const DofMap& dofs,
                                                const NodalUnknowns& displacements);

/// Geometric stiffness of all elements in a state of displacement, lower triangle, same pattern as System::K [N/m].
[[nodiscard]] SparseMatrix geometric_stiffness(const Model& model, const DofMap& dofs,
                                               const NodalUnknowns& displacements);

} // namespace plate
