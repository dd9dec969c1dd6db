// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/dof_map.h>
#include <plate/assembly/model.h>

#include <Eigen/Core>

namespace plate
{

/// Loss factor of each mode: dissipated over stored energy, from the loss factors of every modulus.
///
/// @param shapes  vectors of unknowns, (num_equations, n), any scale
/// @return (n) [-]
/// @source modal strain energy method, [Ungar1962] eq. 6; complex moduli to first order
[[nodiscard]] Eigen::VectorXd mode_losses(const Model& model, const DofMap& dofs, const Eigen::MatrixXd& shapes);

} // namespace plate
