// SPDX-License-Identifier: MPL-2.0
#include <plate/core/error.h>
#include <plate/mesh/planform_region.h>

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <string>

using namespace plate;

namespace
{

std::string error_of(const PlanformRegion& region)
{
  try
  {
    check_region(region);
  }
  catch (const InvalidInput& error)
  {
    return error.what();
  }
  return "no error";
}

/// Share of a fine grid over a square that lies in the region, times the square's area [m2].
double counted_area(const PlanformRegion& region, double half)
{
  constexpr int points = 600;
  int inside = 0;
  for (int i = 0; i < points; ++i)
    for (int j = 0; j < points; ++j)
      inside +=
          contains(region, {half * ((2 * i + 1.0) / points - 1.0), half * ((2 * j + 1.0) / points - 1.0)}) ? 1 : 0;
  return 4.0 * half * half * inside / (points * points);
}

} // namespace

TEST_CASE("a turned ellipse holds its focus line, not its neighbourhood, and has the area pi a b")
{
  const EllipseRegion ellipse = {.centre = {0.01, 0.02}, .axes = {0.12, 0.04}, .angle = Angle::degrees(90)};
  CHECK(contains(ellipse, {0.01, 0.079}));
  CHECK_FALSE(contains(ellipse, {0.01, 0.081}));
  CHECK(contains(ellipse, {0.029, 0.02}));
  CHECK_FALSE(contains(ellipse, {0.031, 0.02}));
  CHECK(region_area(ellipse) / (std::numbers::pi * 0.06 * 0.02) == doctest::Approx(1.0).epsilon(1e-12));
  CHECK(counted_area(ellipse, 0.1) / region_area(ellipse) == doctest::Approx(1.0).epsilon(1e-3));
  for (const Eigen::Vector2d& point : edge_of(ellipse)) // a hair inside is in, a hair outside is not
  {
    CHECK(contains(ellipse, ellipse.centre + 0.999 * (point - ellipse.centre)));
    CHECK_FALSE(contains(ellipse, ellipse.centre + 1.001 * (point - ellipse.centre)));
  }
}

TEST_CASE("a polygon with a notch, in either sense")
{
  PolygonRegion polygon = {{{0, 0}, {0.08, 0}, {0.08, 0.06}, {0.04, 0.02}, {0, 0.06}}};
  for (int sense = 0; sense < 2; ++sense)
  {
    CHECK(contains(polygon, {0.01, 0.03}));
    CHECK_FALSE(contains(polygon, {0.04, 0.03}));
    CHECK(region_area(polygon) / (0.08 * 0.06 - 0.5 * 0.08 * 0.04) == doctest::Approx(1.0).epsilon(1e-12));
    CHECK(counted_area(polygon, 0.1) / region_area(polygon) == doctest::Approx(1.0).epsilon(1e-3));
    std::reverse(polygon.points.begin(), polygon.points.end());
  }
}

TEST_CASE("regions that are none are refused")
{
  const double nan = std::numeric_limits<double>::quiet_NaN();
  CHECK(error_of(EllipseRegion{.centre = {0, 0}, .axes = {0.1, 0.0}}).find("both axes positive") != std::string::npos);
  CHECK(error_of(EllipseRegion{.centre = {nan, 0}, .axes = {0.1, 0.1}}) != "no error");
  CHECK(error_of(PolygonRegion{{{0, 0}, {1, 0}}}).find("at least 3") != std::string::npos);
  CHECK(error_of(PolygonRegion{{{0, 0}, {1, 0}, {2, 0}}}).find("one line") != std::string::npos);
  CHECK(error_of(PolygonRegion{{{0, 0}, {1, 1}, {1, 0}, {0, 1}}}).find("cross each other") != std::string::npos);
  CHECK(error_of(PolygonRegion{{{0, 0}, {1, 0}, {0, nan}}}).find("not finite") != std::string::npos);
  CHECK(error_of(PolygonRegion{{{0, 0}, {1, 0}, {1, 1}, {0, 1}}}) == "no error");
}
