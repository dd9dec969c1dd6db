// SPDX-License-Identifier: MPL-2.0
#include "height_profile.h"

#include <Eigen/Eigenvalues>

namespace plate
{

HeightProfile height_profile(int degree, double zeta)
{
  HeightProfile p = {Eigen::VectorXd::Ones(degree + 1), Eigen::VectorXd::Zero(degree + 1)};
  if (degree >= 1)
  {
    p.value(1) = zeta;
    p.derivative(1) = 1.0;
  }
  for (int k = 2; k <= degree; ++k)
  {
    p.value(k) = ((2 * k - 1) * zeta * p.value(k - 1) - (k - 1) * p.value(k - 2)) / k;
    p.derivative(k) = p.derivative(k - 2) + (2 * k - 1) * p.value(k - 1);
  }
  return p;
}

LinePoints line_points(int count)
{
  Eigen::MatrixXd recurrence = Eigen::MatrixXd::Zero(count, count);
  for (int k = 1; k < count; ++k)
    recurrence(k, k - 1) = recurrence(k - 1, k) = k / std::sqrt(4.0 * k * k - 1.0);
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen(recurrence);
  return {.at = eigen.eigenvalues(), .weight = 2.0 * eigen.eigenvectors().row(0).cwiseAbs2().transpose()};
}

} // namespace plate
