// SPDX-License-Identifier: MPL-2.0
#include <plate/elements/cubic_triangle.h>
#include <plate/elements/quadrature.h>
#include <plate/elements/quartic_bubbles.h>

#include <doctest/doctest.h>

#include <Eigen/LU>

#include <cmath>

using namespace plate;

namespace
{

constexpr double inner_points[4][2] = {{0.1, 0.2}, {0.7, 0.05}, {1.0 / 3.0, 1.0 / 3.0}, {0.2, 0.75}};

double factorial(int n)
{
  return n < 2 ? 1.0 : n * factorial(n - 1);
}

using AllValues = Eigen::Matrix<double, CubicTriangle::num_nodes + QuarticBubbles::num_functions, 1>;

AllValues all_values(double xi, double eta)
{
  AllValues out;
  out << CubicTriangle::shape(xi, eta), QuarticBubbles::value(xi, eta);
  return out;
}

} // namespace

TEST_CASE("bubbles vanish at the nodes of the cubic triangle")
{
  const auto nodes = CubicTriangle::node_coordinates();
  for (int i = 0; i < CubicTriangle::num_nodes; ++i)
    CHECK(QuarticBubbles::value(nodes(i, 0), nodes(i, 1)).cwiseAbs().maxCoeff() < 1e-13);
}

TEST_CASE(
    "the bubble of an edge looks the same from both ends and vanishes on the other edges, as inner ones do on all")
{
  for (const double s : {0.1, 0.2, 0.45})
  {
    const auto on_first = QuarticBubbles::value(s, 0.0);
    CHECK(on_first(0) == doctest::Approx(QuarticBubbles::value(1.0 - s, 0.0)(0)));
    CHECK(on_first(0) == doctest::Approx(QuarticBubbles::value(1.0 - s, s)(1)));
    CHECK(on_first(0) == doctest::Approx(QuarticBubbles::value(0.0, s)(2)));
    CHECK(std::abs(on_first(0)) > 0.1);
    CHECK(on_first.tail<4>().cwiseAbs().maxCoeff() < 1e-13);
  }
}

TEST_CASE("nodes and bubbles together reproduce every quartic polynomial")
{
  // A polynomial of degree four has fifteen coefficients: its values at fifteen points fix it.
  constexpr int n = CubicTriangle::num_nodes + QuarticBubbles::num_functions;
  Eigen::Matrix<double, n, n> at_points;
  Eigen::Matrix<double, n, 2> points;
  for (int i = 0, row = 0; i <= 4; ++i)
    for (int j = 0; i + j <= 4; ++j, ++row)
      points.row(row) << 0.25 * i, 0.25 * j;
  for (int i = 0; i < n; ++i)
    at_points.row(i) = all_values(points(i, 0), points(i, 1)).transpose();
  const Eigen::FullPivLU<Eigen::Matrix<double, n, n>> lu(at_points);
  REQUIRE(lu.rank() == n);
  for (int a = 0; a <= 4; ++a)
    for (int b = 0; a + b <= 4; ++b)
    {
      const auto polynomial = [&](double xi, double eta) { return std::pow(xi, a) * std::pow(eta, b); };
      AllValues values;
      for (int i = 0; i < n; ++i)
        values(i) = polynomial(points(i, 0), points(i, 1));
      const AllValues coefficients = lu.solve(values);
      for (const auto& p : inner_points)
        CHECK(coefficients.dot(all_values(p[0], p[1])) == doctest::Approx(polynomial(p[0], p[1])).epsilon(1e-10));
    }
}

TEST_CASE("gradients are the differences of the bubbles")
{
  const double h = 1e-5;
  for (const auto& p : inner_points)
  {
    const auto gradient = QuarticBubbles::gradient(p[0], p[1]);
    const QuarticBubbles::Vector along_xi =
        (QuarticBubbles::value(p[0] + h, p[1]) - QuarticBubbles::value(p[0] - h, p[1])) / (2 * h);
    const QuarticBubbles::Vector along_eta =
        (QuarticBubbles::value(p[0], p[1] + h) - QuarticBubbles::value(p[0], p[1] - h)) / (2 * h);
    CHECK((gradient.col(0) - along_xi).cwiseAbs().maxCoeff() < 1e-6);
    CHECK((gradient.col(1) - along_eta).cwiseAbs().maxCoeff() < 1e-6);
  }
}

TEST_CASE("the rule of sixteen points is exact to degree eight and no further")
{
  // [Dunavant1985]; the integral of xi^a eta^b over the triangle is a! b! / (a + b + 2)!.
  const auto ratio = [](int a, int b)
  {
    double sum = 0.0;
    for (const TrianglePoint& p : quartic_triangle_points())
      sum += p.weight * std::pow(p.xi, a) * std::pow(p.eta, b);
    return sum * factorial(a + b + 2) / (factorial(a) * factorial(b));
  };
  for (int a = 0; a <= 8; ++a)
    for (int b = 0; a + b <= 8; ++b)
      CHECK(ratio(a, b) == doctest::Approx(1.0).epsilon(1e-12));
  double worst = 0.0;
  for (int a = 0; a <= 9; ++a)
    worst = std::max(worst, std::abs(ratio(a, 9 - a) - 1.0));
  CHECK(worst > 1e-4);
}

TEST_CASE("coefficients from samples give the bubbles the values at the sample points")
{
  QuarticBubbles::Vector values;
  values << 0.3, -1.0, 2.0, 0.7, -0.4;
  const QuarticBubbles::Vector coefficients = QuarticBubbles::from_samples(values);
  const QuarticBubbles::Gradient points = QuarticBubbles::sample_points();
  for (int i = 0; i < QuarticBubbles::num_functions; ++i)
    CHECK(coefficients.dot(QuarticBubbles::value(points(i, 0), points(i, 1))) == doctest::Approx(values(i)));
}
