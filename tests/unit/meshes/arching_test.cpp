// SPDX-License-Identifier: MPL-2.0
#include "relative.h"
#include "viola.h"

#include <plate/core/error.h>

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

using namespace plate;

namespace
{

/// Points of a grid that lie well inside the outline's box [m].
std::vector<Eigen::Vector2d> grid(double half_length, double half_width, int n)
{
  std::vector<Eigen::Vector2d> points;
  for (int i = 1; i < n; ++i)
    for (int j = 1; j < n; ++j)
      points.emplace_back(half_length * (2.0 * i / n - 1.0), half_width * (2.0 * j / n - 1.0));
  return points;
}

} // namespace

TEST_CASE("slopes of every arch are the derivatives of its height")
{
  const Arching kinds[] = {FlatArching{}, CycloidArching{0.0125}, BiparabolicArching{0.015}, EllipticArching{0.015}};
  for (const Arching& arching : kinds)
  {
    const ArchSurface surface(test::viola_outline(), arching);
    double largest = 0.0;
    for (const Eigen::Vector2d& p : grid(0.18, 0.06, 23))
    {
      constexpr double step = 1e-6; // [m]
      const Eigen::Vector2d dx(step, 0.0), dy(0.0, step);
      const Height h = surface.at(p);
      const double z_x = (surface.at(p + dx).z - surface.at(p - dx).z) / (2.0 * step);
      const double z_y = (surface.at(p + dy).z - surface.at(p - dy).z) / (2.0 * step);
      largest = std::max({largest, std::abs(h.z_x - z_x), std::abs(h.z_y - z_y)});
      CHECK(h.normal().norm() == doctest::Approx(1.0).epsilon(1e-14));
      CHECK(h.normal().z() > 0.0);
    }
    CHECK(largest < 1e-7); // differences of 1e-6 m leave rounding of 1e-10 / 1e-6 of the height
  }
}

TEST_CASE("arches of a rectangle and an ellipse follow their formulas")
{
  // z = H (1 - (2x/L)^2)(1 - (2y/W)^2) and z = H (1 - (2x/L)^2 - (2y/W)^2): definitions of the design file.
  const ArchSurface biparabolic(RectangleOutline{0.35, 0.2}, BiparabolicArching{0.015});
  const ArchSurface elliptic(EllipseOutline{0.35, 0.2}, EllipticArching{0.015});
  for (const Eigen::Vector2d& p : grid(0.17, 0.1, 9))
  {
    const double u = std::pow(2.0 * p.x() / 0.35, 2), v = std::pow(2.0 * p.y() / 0.2, 2);
    CHECK(biparabolic.at(p).z == doctest::Approx(0.015 * (1.0 - u) * (1.0 - v)).epsilon(1e-12));
    CHECK(elliptic.at(p).z == doctest::Approx(0.015 * (1.0 - u - v)).epsilon(1e-12));
  }
}

TEST_CASE("a cycloid arch reaches its height at the crown, lies flat at rim and corners, and stays in between")
{
  const ArchSurface surface(test::viola_outline(), CycloidArching{0.0125});
  double crown = 0.0;
  for (const Eigen::Vector2d& p : grid(0.2025, 0.118, 201))
    crown = std::max(crown, surface.at(p).z);
  CHECK(crown <= 0.0125 * (1.0 + 1e-12));
  CHECK(crown == test::relative(0.0125, 1e-3));
  for (const Eigen::Vector2d& p : sample(outline_loop(test::viola_outline()), 50))
    CHECK(std::abs(surface.at(p).z) < 1e-9);
}

TEST_CASE("a cycloid arch has no kinks: slopes change little from point to point")
{
  const ArchSurface surface(test::viola_outline(), CycloidArching{0.0125});
  // A cycloid is bent most in its trough, by (h/2) / (b/pi - h/2)^2; a kink would show as a jump beyond that.
  constexpr double h = 0.0125;                     // [m]
  constexpr double b = 0.5 * 0.131 - 0.405 / 50.0; // half width of the arch at the waist, inside the rim [m]
  const double greatest_bend = 0.5 * h / std::pow(b / std::numbers::pi - 0.5 * h, 2); // [1/m]
  constexpr double step = 0.25e-3;                                                    // [m]
  double steepest_change = 0.0;
  for (double x = -0.19; x <= 0.19; x += 0.01)
    for (double y = -0.055; y <= 0.055; y += step)
      steepest_change = std::max(steepest_change, std::abs(surface.at({x, y + step}).z_y - surface.at({x, y}).z_y));
  CHECK(steepest_change < 1.05 * step * greatest_bend);
}

TEST_CASE("arches that cannot be are refused")
{
  CHECK_THROWS_AS(ArchSurface(test::viola_outline(), CycloidArching{-0.001}), InvalidInput);
  CHECK_THROWS_AS(ArchSurface(test::viola_outline(), CycloidArching{0.2}), InvalidInput);
  CHECK_THROWS_AS(ArchSurface(test::viola_outline(), BiparabolicArching{std::nan("")}), InvalidInput);
}

TEST_CASE("thickness is uniform, or graduated between its four values")
{
  const ThicknessField uniform(test::viola_outline(), UniformThickness{0.0028});
  CHECK(uniform.at({0.1, 0.02}) == 0.0028);
  const GraduatedThickness g{.centre = 0.0031, .bouts = 0.0026, .channel = 0.0023, .edge = 0.0039};
  const ThicknessField graduated(test::viola_outline(), g);
  CHECK(graduated.at({0.0, 0.0}) == test::relative(g.centre, 1e-6));
  CHECK(graduated.at({0.2024, 0.0}) == test::relative(g.edge, 1e-3));
  CHECK(graduated.at({-0.12, 0.0}) == test::relative(g.bouts, 0.02));
  for (const Eigen::Vector2d& p : grid(0.2, 0.06, 41))
  {
    CHECK(graduated.at(p) <= g.edge * (1.0 + 1e-12));
    CHECK(graduated.at(p) >= g.channel * (1.0 - 1e-12));
  }
  CHECK_THROWS_AS(ThicknessField(test::viola_outline(), UniformThickness{0.0}), InvalidInput);
}
