// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "pressure_space.h"

#include <Eigen/Core>

namespace plate
{

/// Mass per density of air between velocity fields, (n, n).
///
/// @param loads  integral of the velocity along the normal times the hat function of each vertex, (vertices, n)
/// @return F^T W^-1 F, with the double layer W and the loads F of the functions of the space
/// @throws NumericalFailure if W is not positive definite
[[nodiscard]] Eigen::MatrixXd mass_per_density(const PressureSpace& space, const Eigen::MatrixXd& loads);

} // namespace plate
