// SPDX-License-Identifier: MPL-2.0
#include "measured.h"
#include "relative.h"

#include <plate/core/error.h>
#include <plate/meshes/surface_fit.h>

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

using namespace plate;
using Eigen::Vector2d;

namespace
{

/// Box of 400 x 240 mm as region.
const std::vector<Vector2d> region = {{-0.2, -0.12}, {0.2, -0.12}, {0.2, 0.12}, {-0.2, 0.12}};

/// A surface with bends of arch size: 12 mm high, shortest half wave 80 mm [m].
double hill(const Vector2d& p)
{
  return 0.012 * std::cos(7.0 * p.x()) * std::cos(13.0 * p.y()) + 0.001 * std::sin(39.0 * p.x() + 11.0 * p.y());
}

Vector2d hill_slope(const Vector2d& p)
{
  const double wave = 0.001 * std::cos(39.0 * p.x() + 11.0 * p.y());
  return {-0.084 * std::sin(7.0 * p.x()) * std::cos(13.0 * p.y()) + 39.0 * wave,
          -0.156 * std::cos(7.0 * p.x()) * std::sin(13.0 * p.y()) + 11.0 * wave};
}

std::vector<SurfacePoint> scattered(int n, double noise)
{
  test::Scatter scatter(7);
  std::vector<SurfacePoint> points;
  for (int i = 0; i < n; ++i)
  {
    const Vector2d p(scatter.uniform(-0.2, 0.2), scatter.uniform(-0.12, 0.12));
    points.push_back({p, hill(p) + noise * scatter.normal()});
  }
  return points;
}

std::vector<SurfacePoint> gridded(int along, int across)
{
  std::vector<SurfacePoint> points;
  for (int i = 0; i <= along; ++i)
    for (int j = 0; j <= across; ++j)
    {
      const Vector2d p(-0.2 + 0.4 * i / along, -0.12 + 0.24 * j / across);
      points.push_back({p, hill(p)});
    }
  return points;
}

struct Errors
{
  double rms = 0.0;       ///< of the value [m]
  double slope_rms = 0.0; ///< [-]
};

Errors errors_of(const SmoothSurface& surface)
{
  Errors e;
  int n = 0;
  for (double x = -0.19; x < 0.19; x += 0.0071)
    for (double y = -0.11; y < 0.11; y += 0.0067, ++n)
    {
      const SurfaceValue v = evaluate(surface, {x, y});
      e.rms += std::pow(v.value - hill({x, y}), 2);
      e.slope_rms += (Vector2d(v.slope_x, v.slope_y) - hill_slope({x, y})).squaredNorm();
    }
  return {std::sqrt(e.rms / n), std::sqrt(e.slope_rms / n)};
}

std::string refusal(const std::vector<SurfacePoint>& points)
{
  try
  {
    static_cast<void>(fit_surface(points, region));
  }
  catch (const InvalidInput& error)
  {
    return error.what();
  }
  return {};
}

bool says(const std::string& text, const char* what)
{
  return text.find(what) != std::string::npos;
}

} // namespace

TEST_CASE("a surface measured with noise is recovered better than it was measured")
{
  constexpr double noise = 2e-4; // [m]
  const SurfaceFit fit = fit_surface(scattered(1500, noise), region);
  const Errors e = errors_of(fit.surface);
  MESSAGE("rms error of the value " << e.rms * 1e3 << " mm, of the slopes " << e.slope_rms);
  // The waves of this surface fill about 100 cells of half a wave: the noise left is sqrt(100 / 1500) of it, a quarter.
  CHECK(e.rms < 0.35 * noise);
  CHECK(fit.report.points == 1500);
  CHECK(fit.report.outliers.empty());
  // Standard error of a deviation from 1500 values is 2 %; the fit itself takes up some of the noise.
  CHECK(fit.report.rms > 0.92 * noise);
  CHECK(fit.report.rms < 1.04 * noise);
  CHECK(std::abs(fit.report.largest.residual) > 2.5 * noise);
  CHECK(std::abs(fit.report.largest.residual) < 5.0 * noise);
}

TEST_CASE("without noise the error falls with the fourth power of the points' distance")
{
  const double coarse = errors_of(fit_surface(gridded(20, 12), region).surface).rms;
  const double fine = errors_of(fit_surface(gridded(40, 24), region).surface).rms;
  const double order = std::log2(coarse / fine);
  MESSAGE("errors " << coarse * 1e3 << " and " << fine * 1e3 << " mm, order " << order);
  CHECK(order > 3.5);
  CHECK(fine < 1e-6);
}

TEST_CASE("slopes are the derivatives of the value, in the box and beyond it")
{
  const SmoothSurface s = fit_surface(scattered(300, 1e-4), region).surface;
  constexpr double step = 1e-6; // [m]
  for (const Vector2d& p : {Vector2d(0.01, 0.02), Vector2d(-0.17, 0.1), Vector2d(0.0, 0.11)})
  {
    const SurfaceValue v = evaluate(s, p);
    const double dx = evaluate(s, p + Vector2d(step, 0.0)).value - evaluate(s, p - Vector2d(step, 0.0)).value;
    const double dy = evaluate(s, p + Vector2d(0.0, step)).value - evaluate(s, p - Vector2d(0.0, step)).value;
    CHECK(v.slope_x == test::relative(dx / (2.0 * step), 1e-6));
    CHECK(v.slope_y == test::relative(dy / (2.0 * step), 1e-6));
  }
  const SurfaceValue edge = evaluate(s, {s.high.x(), 0.0});
  CHECK(evaluate(s, {s.high.x() + 0.1, 0.0}).value == test::relative(edge.value + 0.1 * edge.slope_x));
}

TEST_CASE("outliers are named and do not bend the surface")
{
  constexpr double noise = 1e-4;
  std::vector<SurfacePoint> points = scattered(600, noise);
  points[17].value += 0.003;
  points[18].place = points[17].place + Vector2d(0.004, 0.0); // a good point right beside a bad one
  points[18].value = hill(points[18].place);
  points[300].value -= 0.0012;
  points[599].value += 10.0; // a decimal point in the wrong place
  const SurfaceFit fit = fit_surface(points, region);
  REQUIRE(fit.report.outliers.size() == 3);
  CHECK(fit.report.outliers[0].point == 17);
  CHECK(fit.report.outliers[1].point == 300);
  CHECK(fit.report.outliers[2].point == 599);
  CHECK(fit.report.outliers[0].residual == test::relative(0.003, 0.1));
  CHECK(fit.report.outliers[1].place == points[300].place);
  CHECK(errors_of(fit.surface).rms < 0.6 * noise);
}

TEST_CASE("a plane is a plane, however few the points and however they contradict each other at one place")
{
  std::vector<SurfacePoint> points;
  for (const SurfacePoint& p : gridded(4, 3))
    for (const double noise : {-1e-5, 1e-5})
      points.push_back({p.place, 0.003 + 0.05 * p.place.x() + noise});
  const SmoothSurface s = fit_surface(points, region).surface;
  for (const Vector2d& p : {Vector2d(0.0, 0.0), Vector2d(0.2, 0.12), Vector2d(-0.13, 0.03)})
  {
    CHECK(evaluate(s, p).value == test::relative(0.003 + 0.05 * p.x(), 1e-6));
    CHECK(std::abs(evaluate(s, p).slope_y) < 1e-6);
  }
}

TEST_CASE("templates at five stations with the long arch are enough")
{
  std::vector<SurfacePoint> points;
  for (int i = -100; i <= 100; ++i)
    points.push_back({{0.002 * i, 0.0}, hill({0.002 * i, 0.0})});
  for (const double x : {-0.16, -0.08, 0.0, 0.08, 0.16})
    for (int j = -60; j <= 60; ++j)
      points.push_back({{x, 0.002 * j}, hill({x, 0.002 * j})});
  CHECK(fit_surface(points, region).report.rms < 1e-5);
}

TEST_CASE("points that make no surface are refused")
{
  std::vector<SurfacePoint> points = scattered(9, 0.0);
  CHECK(says(refusal(points), "at least 10 are needed; got 9"));
  points = scattered(50, 0.0);
  points[7].value = std::nan("");
  CHECK(says(refusal(points), "number 8 is not finite"));
  points = scattered(50, 0.0);
  points[7].place.x() = HUGE_VAL;
  CHECK(says(refusal(points), "number 8 is not finite"));
  points = scattered(50, 0.0);
  for (SurfacePoint& p : points)
    p.place.y() = 0.5 * p.place.x();
  CHECK(says(refusal(points), "in one line"));
  points = scattered(200, 0.0);
  for (SurfacePoint& p : points)
    p.place.x() = std::abs(p.place.x()); // the lower half was not measured
  CHECK(says(refusal(points), "% of the plate lies further than"));
  points = scattered(200, 0.0);
  for (SurfacePoint& p : points)
    p.place *= 25.4; // in the wrong unit
  CHECK(says(refusal(points), "in mm"));
  CHECK(says(refusal(std::vector<SurfacePoint>(200001, SurfacePoint{{0.0, 0.0}, 0.0})), "at most 200000"));
}
