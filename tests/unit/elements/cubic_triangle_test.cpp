// SPDX-License-Identifier: MPL-2.0
#include <plate/elements/cubic_triangle.h>
#include <plate/elements/quadrature.h>

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace plate;

namespace
{

constexpr double inner_points[4][2] = {{0.1, 0.2}, {0.7, 0.05}, {1.0 / 3.0, 1.0 / 3.0}, {0.2, 0.75}};

double factorial(int n)
{
  return n < 2 ? 1.0 : n * factorial(n - 1);
}

/// Quadrature of xi^a eta^b over its exact integral a! b! / (a + b + 2)!.
double quadrature_ratio(int a, int b)
{
  double sum = 0.0;
  for (const TrianglePoint& p : triangle_points())
    sum += p.weight * std::pow(p.xi, a) * std::pow(p.eta, b);
  return sum * factorial(a + b + 2) / (factorial(a) * factorial(b));
}

} // namespace

TEST_CASE("each shape function is one at its own node and zero at the others")
{
  const auto nodes = CubicTriangle::node_coordinates();
  for (int i = 0; i < CubicTriangle::num_nodes; ++i)
  {
    CubicTriangle::Vector expected = CubicTriangle::Vector::Zero();
    expected(i) = 1.0;
    CHECK((CubicTriangle::shape(nodes(i, 0), nodes(i, 1)) - expected).cwiseAbs().maxCoeff() < 1e-14);
  }
}

TEST_CASE("nodes come in the order a mesh promises: corners, edges walked round, centre")
{
  const auto nodes = CubicTriangle::node_coordinates();
  const double t = 1.0 / 3.0;
  const double expected[10][2] = {{0, 0},     {1, 0},     {0, 1},     {t, 0}, {2 * t, 0},
                                  {2 * t, t}, {t, 2 * t}, {0, 2 * t}, {0, t}, {t, t}};
  for (int i = 0; i < CubicTriangle::num_nodes; ++i)
  {
    CHECK(nodes(i, 0) == doctest::Approx(expected[i][0]));
    CHECK(nodes(i, 1) == doctest::Approx(expected[i][1]));
  }
}

TEST_CASE("shape functions reproduce every cubic polynomial, constants first")
{
  const auto nodes = CubicTriangle::node_coordinates();
  for (int a = 0; a <= 3; ++a)
    for (int b = 0; a + b <= 3; ++b)
      for (const auto& p : inner_points)
      {
        const auto N = CubicTriangle::shape(p[0], p[1]);
        double sum = 0.0;
        for (int i = 0; i < CubicTriangle::num_nodes; ++i)
          sum += N(i) * std::pow(nodes(i, 0), a) * std::pow(nodes(i, 1), b);
        CHECK(sum == doctest::Approx(std::pow(p[0], a) * std::pow(p[1], b)).epsilon(1e-12));
      }
}

TEST_CASE("gradients are the differences of the shape functions")
{
  const double h = 1e-5;
  for (const auto& p : inner_points)
  {
    const auto gradient = CubicTriangle::gradient(p[0], p[1]);
    const CubicTriangle::Vector along_xi =
        (CubicTriangle::shape(p[0] + h, p[1]) - CubicTriangle::shape(p[0] - h, p[1])) / (2 * h);
    const CubicTriangle::Vector along_eta =
        (CubicTriangle::shape(p[0], p[1] + h) - CubicTriangle::shape(p[0], p[1] - h)) / (2 * h);
    CHECK((gradient.col(0) - along_xi).cwiseAbs().maxCoeff() < 1e-8);
    CHECK((gradient.col(1) - along_eta).cwiseAbs().maxCoeff() < 1e-8);
  }
}

TEST_CASE("the quadrature is exact to degree six and no further")
{
  // [Dunavant1985]: the rule of twelve points has degree six.
  for (int a = 0; a <= 6; ++a)
    for (int b = 0; a + b <= 6; ++b)
      CHECK(quadrature_ratio(a, b) == doctest::Approx(1.0).epsilon(1e-12));
  double worst = 0.0;
  for (int a = 0; a <= 7; ++a)
    worst = std::max(worst, std::abs(quadrature_ratio(a, 7 - a) - 1.0));
  CHECK(worst > 1e-4);
}

TEST_CASE("quadrature points lie inside the triangle and have positive weights")
{
  for (const TrianglePoint& p : triangle_points())
  {
    CHECK(p.xi > 0.0);
    CHECK(p.eta > 0.0);
    CHECK(p.xi + p.eta < 1.0);
    CHECK(p.weight > 0.0);
  }
}
