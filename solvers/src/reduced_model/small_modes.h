// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>

namespace plate::reduced
{

/// Lowest elastic modes of small dense matrices whose first unknowns are rigid motions.
struct SmallModes
{
  Eigen::VectorXd eigenvalues; ///< ascending, (n) [1/s2]
  Eigen::MatrixXd vectors;     ///< (size, n), vectors^T M vectors = I
};

/// Lower triangles are read.
/// @param stiffness  (size, size); rows and columns of rigid motions are taken as zero
/// @param mass       (size, size), positive definite
/// @param num_rigid  unknowns that are rigid motions
/// @throws NumericalFailure if the stiffness without them is not positive definite
[[nodiscard]] SmallModes small_modes(const Eigen::MatrixXd& stiffness, const Eigen::MatrixXd& mass,
                                     Eigen::Index num_rigid, Eigen::Index num_modes);

} // namespace plate::reduced
