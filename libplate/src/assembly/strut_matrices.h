// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "body_nodes.h"

#include <vector>

namespace plate
{

/// A strut, or a rigid body, as what it does to the places under its feet.
struct StrutMatrices
{
  std::vector<int> places; ///< of both feet, ascending
  Eigen::MatrixXd motions; ///< displacement and rotation of each foot from the unknowns of the places, (6 or 12, n)
  Eigen::MatrixXd K;       ///< in the axes of the body [N/m, N, N m]
  Eigen::MatrixXd M;       ///< [kg, kg m, kg m2]
  double mass;             ///< [kg]
  Eigen::Vector3d centre;  ///< [m]
};

/// @throws InvalidInput if a foot stands on no part, beside its part, or a constant is not positive
[[nodiscard]] StrutMatrices strut_matrices(const Body& body, const BodyNodes& nodes, const Strut& strut);

/// @throws InvalidInput if it is fixed to no part or fewer than three nodes, or its mass is not positive
[[nodiscard]] StrutMatrices mass_matrices(const Body& body, const BodyNodes& nodes, const FixedMass& mass);

} // namespace plate
