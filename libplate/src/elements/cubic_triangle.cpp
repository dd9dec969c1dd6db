// SPDX-License-Identifier: MPL-2.0
#include <plate/elements/cubic_triangle.h>

#include <array>

namespace plate
{

namespace
{

/// Derivatives along the area coordinates L0 = 1 - xi - eta, L1 = xi, L2 = eta, taken as independent.
Eigen::Matrix<double, 10, 3> area_gradient(const std::array<double, 3>& L)
{
  Eigen::Matrix<double, 10, 3> g = Eigen::Matrix<double, 10, 3>::Zero();
  for (int i = 0; i < 3; ++i)
  {
    const double Li = L[static_cast<std::size_t>(i)];
    g(i, i) = 13.5 * Li * Li - 9.0 * Li + 1.0;
  }
  for (int edge = 0; edge < 3; ++edge)
  {
    const int a = edge;
    const int b = (edge + 1) % 3;
    const double La = L[static_cast<std::size_t>(a)];
    const double Lb = L[static_cast<std::size_t>(b)];
    const int near_a = 3 + 2 * edge;
    g(near_a, a) = 4.5 * Lb * (6.0 * La - 1.0);
    g(near_a, b) = 4.5 * La * (3.0 * La - 1.0);
    g(near_a + 1, b) = 4.5 * La * (6.0 * Lb - 1.0);
    g(near_a + 1, a) = 4.5 * Lb * (3.0 * Lb - 1.0);
  }
  g.row(9) << 27.0 * L[1] * L[2], 27.0 * L[0] * L[2], 27.0 * L[0] * L[1];
  return g;
}

} // namespace

CubicTriangle::Vector CubicTriangle::shape(double xi, double eta)
{
  const std::array<double, 3> L = {1.0 - xi - eta, xi, eta};
  Vector N;
  for (int i = 0; i < 3; ++i)
  {
    const double Li = L[static_cast<std::size_t>(i)];
    N(i) = 0.5 * Li * (3.0 * Li - 1.0) * (3.0 * Li - 2.0);
  }
  for (int edge = 0; edge < 3; ++edge)
  {
    const double La = L[static_cast<std::size_t>(edge)];
    const double Lb = L[static_cast<std::size_t>((edge + 1) % 3)];
    N(3 + 2 * edge) = 4.5 * La * Lb * (3.0 * La - 1.0);
    N(4 + 2 * edge) = 4.5 * La * Lb * (3.0 * Lb - 1.0);
  }
  N(9) = 27.0 * L[0] * L[1] * L[2];
  return N;
}

CubicTriangle::Gradient CubicTriangle::gradient(double xi, double eta)
{
  const Eigen::Matrix<double, 10, 3> g = area_gradient({1.0 - xi - eta, xi, eta});
  Gradient out;
  out.col(0) = g.col(1) - g.col(0);
  out.col(1) = g.col(2) - g.col(0);
  return out;
}

CubicTriangle::Gradient CubicTriangle::node_coordinates()
{
  constexpr double t = 1.0 / 3.0;
  Gradient x;
  x << 0.0, 0.0, 1.0, 0.0, 0.0, 1.0, t, 0.0, 2.0 * t, 0.0, 2.0 * t, t, t, 2.0 * t, 0.0, 2.0 * t, 0.0, t, t, t;
  return x;
}

} // namespace plate
