// SPDX-License-Identifier: MPL-2.0
#include "measured.h"
#include "relative.h"
#include "viola.h"

#include <plate/core/error.h>
#include <plate/meshes/arch_fit.h>
#include <plate/meshes/curve_fit.h>
#include <plate/meshes/inner_shape.h>
#include <plate/meshes/thickness_fit.h>

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

using namespace plate;
using Eigen::Vector2d;

namespace
{

constexpr double noise = 2e-4; // of a height [m]

/// Places spread over the box of the plate, with a value each.
template <class Value>
std::vector<SurfacePoint> measured(int n, double deviation, const Value& value)
{
  test::Scatter scatter(11);
  std::vector<SurfacePoint> points;
  while (static_cast<int>(points.size()) < n)
  {
    const Vector2d p(scatter.uniform(-0.2025, 0.2025), scatter.uniform(-0.118, 0.118));
    points.push_back({p, value(p) + deviation * scatter.normal()});
  }
  return points;
}

/// Root mean square of a difference over the middle of the plate [m].
template <class Difference>
double rms(const Difference& difference)
{
  double sum = 0.0;
  int n = 0;
  for (double x = -0.19; x < 0.19; x += 0.0073)
    for (double y = -0.055; y < 0.055; y += 0.0061, ++n)
      sum += std::pow(difference(Vector2d(x, y)), 2);
  return std::sqrt(sum / n);
}

} // namespace

TEST_CASE("a cycloid arch measured with noise is recovered far better than it was measured")
{
  const Outline outline = test::viola_outline();
  const ArchSurface truth(outline, CycloidArching{0.0125});
  const ArchFit fit = fit_arching(measured(1500, noise, [&](const Vector2d& p) { return truth.at(p).z; }), outline);
  const ArchSurface arch(outline, fit.arching);
  CHECK(fit.arching.cycloid_height == test::relative(0.0125, 0.01));
  CHECK(rms([&](const Vector2d& p) { return arch.at(p).z - truth.at(p).z; }) < 0.15 * noise);
  CHECK(fit.report.outliers.empty());
  CHECK(fit.report.rms == test::relative(noise, 0.06)); // three standard errors of 1500 values
}

TEST_CASE("an arch of no known shape is recovered, too")
{
  // A full arch with an edge of its own, higher towards one side and one end.
  const Outline outline = test::viola_outline();
  const InnerShape shape(outline);
  const auto truth = [&](const Vector2d& p)
  {
    const double b = shape.at(p.x()).squared;
    if (std::abs(p.x()) >= shape.half_length() || b <= p.y() * p.y())
      return 0.0;
    const double across = 1.0 - p.y() * p.y() / b, along = 1.0 - std::pow(p.x() / shape.half_length(), 4);
    return 0.0125 * across * across * along * along * (1.0 + 0.06 * std::sin(12.0 * p.x()) + 0.8 * p.y());
  };
  const ArchFit fit = fit_arching(measured(1500, noise, truth), outline);
  const ArchSurface arch(outline, fit.arching);
  const double error = rms([&](const Vector2d& p) { return arch.at(p).z - truth(p); });
  MESSAGE("error " << error * 1e3 << " mm");
  CHECK(error < 0.5 * noise);
}

TEST_CASE("a dome without a channel gets none")
{
  const Outline outline = EllipseOutline{0.405, 0.236};
  const ArchSurface truth(outline, EllipticArching{0.012});
  const ArchFit fit = fit_arching(measured(800, 2e-5, [&](const Vector2d& p) { return truth.at(p).z; }), outline);
  const ArchSurface arch(outline, fit.arching);
  CHECK(fit.arching.cycloid_height == 0.0);
  CHECK(rms([&](const Vector2d& p) { return arch.at(p).z - truth.at(p).z; }) < 1e-5);
}

TEST_CASE("slopes of a measured arch are the derivatives of its height")
{
  const Outline outline = test::viola_outline();
  const ArchSurface truth(outline, CycloidArching{0.0125});
  const ArchSurface arch(
      outline, fit_arching(measured(500, noise, [&](const Vector2d& p) { return truth.at(p).z; }), outline).arching);
  constexpr double step = 1e-6; // [m]
  for (const Vector2d& p : {Vector2d(0.01, 0.02), Vector2d(-0.15, -0.08), Vector2d(0.1, 0.05)})
  {
    const Vector2d dx(step, 0.0), dy(0.0, step);
    CHECK(arch.at(p).z_x == test::relative((arch.at(p + dx).z - arch.at(p - dx).z) / (2.0 * step), 1e-5));
    CHECK(arch.at(p).z_y == test::relative((arch.at(p + dy).z - arch.at(p - dy).z) / (2.0 * step), 1e-5));
  }
}

TEST_CASE("a graduation with a thick edge is recovered; layup.scale acts on all of it")
{
  const Outline outline = test::viola_outline();
  const ThicknessField truth(outline,
                             GraduatedThickness{.centre = 0.0031, .bouts = 0.0025, .channel = 0.0023, .edge = 0.0039});
  const auto points = measured(400, 5e-5, [&](const Vector2d& p) { return truth.at(p); });
  ThicknessFit fit = fit_thickness(points, outline);
  CHECK(fit.report.outliers.empty());
  const ThicknessField field(outline, fit.thickness);
  CHECK(rms([&](const Vector2d& p) { return field.at(p) - truth.at(p); }) < 0.4 * 5e-5);
  CHECK(field.at({0.2024, 0.0}) == test::relative(0.0039, 0.02)); // the edge itself
  fit.thickness.scale = 1.5;
  CHECK(ThicknessField(outline, fit.thickness).at({0.0, 0.0}) == test::relative(1.5 * field.at({0.0, 0.0})));
}

TEST_CASE("a thickness that falls to nothing inside the outline is refused")
{
  const Outline outline = RectangleOutline{0.4, 0.23};
  const auto wedge = measured(200, 0.0, [](const Vector2d& p) { return 0.002 + 0.02 * p.x(); });
  CHECK_THROWS_AS(ThicknessField(outline, fit_thickness(wedge, outline).thickness), InvalidInput);
}

TEST_CASE("a measured outline gives the same inner shape as the one it was measured from")
{
  const Outline truth = test::viola_outline();
  test::Scatter scatter(2);
  const CurveLoop loop = fit_closed_curve(test::measure(outline_loop(truth), 0.003, noise, scatter).points).loop;
  const CurveOutline outline = curve_outline(loop);
  CHECK(outline_length(outline) == doctest::Approx(0.405).epsilon(1e-3));
  CHECK(outline_width(outline) == test::relative(0.236, 2e-3));
  const InnerShape from(truth), fitted(outline);
  for (double x = -0.19; x <= 0.19; x += 0.01) // near the corners what is left out differs a little
    CHECK(std::abs(std::sqrt(from.at(x).squared) - std::sqrt(fitted.at(x).squared)) < 0.0015);
}

TEST_CASE("an outline whose origin is not in its middle is refused with the shift to make")
{
  CurveLoop loop;
  for (const CurvePiece& piece : outline_loop(test::viola_outline()).pieces)
    loop.pieces.push_back(moved(piece, 0.0, {0.2025, 0.0}));
  CHECK_THROWS_WITH_AS(static_cast<void>(curve_outline(loop)), doctest::Contains("x = 202.5"), InvalidInput);
}
