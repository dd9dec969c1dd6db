// SPDX-License-Identifier: MPL-2.0
#include <plate/elements/quartic_bubbles.h>

#include <Eigen/LU>

#include <array>
#include <cstddef>

namespace plate
{

QuarticBubbles::Vector QuarticBubbles::value(double xi, double eta)
{
  const std::array<double, 3> L = {1.0 - xi - eta, xi, eta};
  Vector out;
  for (int edge = 0; edge < 3; ++edge)
  {
    const double a = L[static_cast<std::size_t>(edge)];
    const double b = L[static_cast<std::size_t>((edge + 1) % 3)];
    out(edge) = 81.0 * a * b * (3.0 * a - 1.0) * (3.0 * b - 1.0);
  }
  const double centre = 81.0 * L[0] * L[1] * L[2];
  out(3) = centre * (L[0] - L[1]);
  out(4) = centre * (2.0 * L[2] - L[0] - L[1]);
  return out;
}

QuarticBubbles::Gradient QuarticBubbles::gradient(double xi, double eta)
{
  const std::array<double, 3> L = {1.0 - xi - eta, xi, eta};
  Eigen::Matrix<double, num_functions, 3> g = Eigen::Matrix<double, num_functions, 3>::Zero(); // along L as independent
  for (int edge = 0; edge < 3; ++edge)
  {
    const int next = (edge + 1) % 3;
    const double a = L[static_cast<std::size_t>(edge)];
    const double b = L[static_cast<std::size_t>(next)];
    g(edge, edge) = 81.0 * b * (3.0 * b - 1.0) * (6.0 * a - 1.0);
    g(edge, next) = 81.0 * a * (3.0 * a - 1.0) * (6.0 * b - 1.0);
  }
  const double centre = 81.0 * L[0] * L[1] * L[2];
  const Eigen::RowVector3d slope = 81.0 * Eigen::RowVector3d(L[1] * L[2], L[0] * L[2], L[0] * L[1]);
  g.row(3) = slope * (L[0] - L[1]) + centre * Eigen::RowVector3d(1.0, -1.0, 0.0);
  g.row(4) = slope * (2.0 * L[2] - L[0] - L[1]) + centre * Eigen::RowVector3d(-1.0, -1.0, 2.0);
  Gradient out;
  out.col(0) = g.col(1) - g.col(0);
  out.col(1) = g.col(2) - g.col(0);
  return out;
}

QuarticBubbles::Gradient QuarticBubbles::sample_points()
{
  Gradient points;
  points << 0.5, 0.0, 0.5, 0.5, 0.0, 0.5, 0.25, 0.25, 0.5, 0.25;
  return points;
}

QuarticBubbles::Vector QuarticBubbles::from_samples(const Vector& values)
{
  static const Eigen::Matrix<double, num_functions, num_functions> inverse = []
  {
    const Gradient points = sample_points();
    Eigen::Matrix<double, num_functions, num_functions> at_points;
    for (int i = 0; i < num_functions; ++i)
      at_points.row(i) = value(points(i, 0), points(i, 1)).transpose();
    return Eigen::Matrix<double, num_functions, num_functions>(at_points.inverse());
  }();
  return inverse * values;
}

} // namespace plate
