// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>

namespace plate
{

/// Mobility of an infinite thin orthotropic plate at the point where a force acts, real at all frequencies [s/kg].
///
/// The level about which the mobility of a finite plate of the same section goes up and down.
/// @param D           bending stiffness, order (11, 22, 12), no entries 16 and 26 [N m]
/// @param areal_mass  [kg/m2]
/// @throws InvalidInput if D is not positive definite or couples bending and twist, or the mass is not positive
/// @source own integral over wave directions, K the complete elliptic integral: Y = K(m) / (4 pi sqrt(m'')
///   (D11 D22)^(1/4)), m = (1 - (D12 + 2 D66) / sqrt(D11 D22)) / 2; isotropic [Cremer2005] ch. 5; pinned by
///   tests/unit/post/infinite_plate_test.cpp
[[nodiscard]] double infinite_plate_mobility(const Eigen::Matrix3d& D, double areal_mass);

} // namespace plate
