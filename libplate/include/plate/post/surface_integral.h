// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/dof_map.h>
#include <plate/elements/cubic_triangle.h>
#include <plate/mesh/shell_mesh.h>

#include <Eigen/Core>

#include <cstddef>

namespace plate
{

/// Integral of each shape function of a triangle over its mid-surface; they add up to its area [m2].
[[nodiscard]] CubicTriangle::Vector nodal_areas(const ShellMesh& mesh, std::size_t triangle);

/// Area that each node stands for: the integral of its shape function over the mid-surface, all positive, (num_nodes).
///
/// weights.dot(f) integrates a nodal field f over the plate [m2].
[[nodiscard]] Eigen::VectorXd nodal_areas(const ShellMesh& mesh);

/// Displacement along the outward normal at each node, (num_nodes) [as u].
[[nodiscard]] Eigen::VectorXd normal_displacement(const ShellMesh& mesh, const Eigen::Matrix3Xd& u);

/// The same of vectors of unknowns, (num_nodes, n) [m].
[[nodiscard]] Eigen::MatrixXd normal_displacements(const ShellMesh& mesh, const DofMap& dofs,
                                                   const Eigen::MatrixXd& unknowns);

} // namespace plate
