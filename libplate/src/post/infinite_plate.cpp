// SPDX-License-Identifier: MPL-2.0
#include <plate/post/infinite_plate.h>

#include <plate/core/error.h>

#include <cmath>
#include <numbers>

namespace plate
{
namespace
{

/// Complete elliptic integral K(m) for m < 1 by the arithmetic-geometric mean: negative m too.
double complete_elliptic(double m)
{
  double a = 1.0;
  double b = std::sqrt(1.0 - m);
  while (std::abs(a - b) > 1e-14 * a)
  {
    const double mean = 0.5 * (a + b);
    b = std::sqrt(a * b);
    a = mean;
  }
  return 0.5 * std::numbers::pi / a;
}

} // namespace

double infinite_plate_mobility(const Eigen::Matrix3d& D, double areal_mass)
{
  const double root = std::sqrt(D(0, 0) * D(1, 1));
  const double k = (D(0, 1) + 2.0 * D(2, 2)) / root;
  const double coupling = std::abs(D(0, 2)) + std::abs(D(1, 2));
  if (!(areal_mass > 0.0 && D(0, 0) > 0.0 && D(1, 1) > 0.0 && k > -1.0 && coupling <= 1e-6 * root))
    throw InvalidInput(
        message("infinite_plate_mobility: D must be positive definite without bend-twist coupling and the mass "
                "positive; got D11 = ",
                D(0, 0), ", D22 = ", D(1, 1), ", D12 = ", D(0, 1), ", D66 = ", D(2, 2), ", D16 = ", D(0, 2),
                ", D26 = ", D(1, 2), " N m and ", areal_mass, " kg/m2; turn the axes to those of the laminate"));
  return complete_elliptic(0.5 * (1.0 - k)) / (4.0 * std::numbers::pi * std::sqrt(areal_mass * root));
}

} // namespace plate
