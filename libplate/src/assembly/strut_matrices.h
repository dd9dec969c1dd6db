// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "body_nodes.h"

#include <vector>

namespace plate
{

/// A strut as what it does to the places under its feet.
struct StrutMatrices
{
  std::vector<int> places;         ///< of both feet, ascending
  Eigen::MatrixXd motions;         ///< displacement and rotation of each foot from the unknowns of the places, (12, n)
  Eigen::Matrix<double, 12, 12> K; ///< in the axes of the body [N/m, N, N m]
  Eigen::Matrix<double, 12, 12> M; ///< [kg, kg m, kg m2]
  double mass;                     ///< [kg]
  Eigen::Vector3d centre;          ///< [m]
};

/// @throws InvalidInput if a foot stands on no part, beside its part, or a constant is not positive
[[nodiscard]] StrutMatrices strut_matrices(const Body& body, const BodyNodes& nodes, const Strut& strut);

} // namespace plate
