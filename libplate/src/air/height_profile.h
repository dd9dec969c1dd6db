// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>

namespace plate
{

/// Legendre polynomials P_0 ... P_degree at zeta in -1...1 and their derivatives, (degree + 1) each.
struct HeightProfile
{
  Eigen::VectorXd value;
  Eigen::VectorXd derivative;
};

[[nodiscard]] HeightProfile height_profile(int degree, double zeta);

/// Points of Gauss and Legendre on -1...1, exact to degree 2 count - 1; the weights add up to 2.
struct LinePoints
{
  Eigen::VectorXd at;
  Eigen::VectorXd weight;
};

/// @source eigenvalues of the recurrence, [GolubWelsch1969]
[[nodiscard]] LinePoints line_points(int count);

} // namespace plate
