// SPDX-License-Identifier: MPL-2.0
#include "measured.h"
#include "relative.h"
#include "viola.h"

#include <plate/core/error.h>
#include <plate/meshes/curve_fit.h>

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

using namespace plate;
using Eigen::Vector2d;

namespace
{

using std::numbers::pi;

/// Points on an ellipse of half axes 170 and 100 mm [m].
std::vector<Vector2d> ellipse_points(int n)
{
  std::vector<Vector2d> points;
  for (int k = 0; k < n; ++k)
    points.emplace_back(0.17 * std::cos(2.0 * pi * k / n), 0.10 * std::sin(2.0 * pi * k / n));
  return points;
}

/// Greatest error of points on the fit against the ellipse, measured by its equation (scaled to the short axis) [m].
double ellipse_error(const CurveLoop& loop)
{
  double greatest = 0.0;
  for (const Vector2d& p : sample(loop, 60))
    greatest = std::max(greatest, 0.10 * std::abs(std::hypot(p.x() / 0.17, p.y() / 0.10) - 1.0));
  return greatest;
}

std::vector<Vector2d> corners_of(const CurveLoop& loop)
{
  std::vector<Vector2d> corners;
  for (std::size_t i = 0; i < loop.pieces.size(); ++i)
    if (is_corner(loop, i))
      corners.push_back(evaluate(loop.pieces[i], 0.0).position);
  return corners;
}

/// Root mean square of the distances of points on the fit from a curve [m].
double rms_distance(const CurveLoop& fit, const CurveLoop& truth)
{
  const std::vector<Vector2d> dense = sample(truth, 3000); // at most 0.05 mm apart on a viola
  double sum = 0.0;
  const std::vector<Vector2d> points = sample(fit, 10);
  for (const Vector2d& p : points)
  {
    double least = HUGE_VAL;
    for (const Vector2d& q : dense)
      least = std::min(least, (p - q).squaredNorm());
    sum += least;
  }
  return std::sqrt(sum / static_cast<double>(points.size()));
}

std::string refusal(const std::vector<Vector2d>& points)
{
  try
  {
    static_cast<void>(fit_closed_curve(points));
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

TEST_CASE("a circle of twelve points becomes round, a square of four stays one")
{
  std::vector<Vector2d> circle;
  for (int k = 0; k < 12; ++k)
    circle.emplace_back(0.1 * std::cos(pi * k / 6.0), 0.1 * std::sin(pi * k / 6.0));
  const CurveLoop round = fit_closed_curve(circle).loop;
  CHECK(corners_of(round).empty());
  for (const CurvePiece& piece : round.pieces)
    for (const double t : {0.0, 0.3, 0.7, 1.0})
    {
      CHECK(evaluate(piece, t).position.norm() == test::relative(0.1, 1e-4));
      CHECK(evaluate(piece, t).curvature() == doctest::Approx(10.0).epsilon(0.01));
    }
  const std::vector<Vector2d> square = {{0.0, 0.0}, {0.1, 0.0}, {0.1, 0.1}, {0.0, 0.1}};
  const CurveFit fit = fit_closed_curve(square);
  CHECK(fit.loop.pieces.size() == 4);
  CHECK(corners_of(fit.loop).size() == 4);
  CHECK(enclosed_area(fit.loop) == doctest::Approx(0.01).epsilon(1e-12));
}

TEST_CASE("without noise the error of a smooth curve falls at least with the fourth power of the points' distance")
{
  const double coarse = ellipse_error(fit_closed_curve(ellipse_points(24)).loop);
  const double fine = ellipse_error(fit_closed_curve(ellipse_points(48)).loop);
  MESSAGE("errors " << coarse * 1e3 << " and " << fine * 1e3 << " mm, order " << std::log2(coarse / fine));
  CHECK(std::log2(coarse / fine) > 4.0);
  CHECK(fine < 1e-5);
}

TEST_CASE("direction, start and a repeated first point make no difference")
{
  std::vector<Vector2d> points = ellipse_points(60);
  const double area = enclosed_area(fit_closed_curve(points).loop);
  CHECK(area == test::relative(pi * 0.17 * 0.10, 1e-5)); // of an ellipse; 60 points, fourth power: 7e-6
  std::reverse(points.begin(), points.end());
  std::rotate(points.begin(), points.begin() + 17, points.end());
  points.push_back(points.front());
  const CurveFit fit = fit_closed_curve(points);
  CHECK(enclosed_area(fit.loop) == test::relative(area, 1e-6));
  CHECK(fit.report.points == 60);
}

TEST_CASE("the outline of a viola measured with noise keeps its corners and is smooth elsewhere")
{
  constexpr double noise = 2e-4; // [m]
  const CurveLoop truth = outline_loop(test::viola_outline());
  const std::vector<Vector2d> true_corners = corners_of(truth);
  for (const std::uint32_t seed : {1U, 2U, 3U})
  {
    CAPTURE(seed);
    test::Scatter scatter(seed);
    const test::MeasuredLoop measured = test::measure(truth, 0.003, noise, scatter);
    for (const bool given : {false, true})
    {
      CAPTURE(given);
      const CurveFit fit = fit_closed_curve(measured.points, given ? std::optional(measured.corners) : std::nullopt);
      const std::vector<Vector2d> corners = corners_of(fit.loop);
      REQUIRE(corners.size() == true_corners.size());
      for (const Vector2d& c : corners) // 5 standard deviations of a point measured by itself
        CHECK(std::any_of(true_corners.begin(), true_corners.end(),
                          [&](const Vector2d& t) { return (c - t).norm() < 5.0 * noise; }));
      CHECK(fit.report.outliers.empty());
      CHECK(fit.report.points == measured.points.size());
      // Better than a point by itself; the residuals across the curve are the noise less what the fit takes up.
      CHECK(rms_distance(fit.loop, truth) < 0.7 * noise);
      CHECK(fit.report.rms > 0.8 * noise);
      CHECK(fit.report.rms < 1.05 * noise);
      CHECK(fit.loop.pieces.size() < 80);
      for (std::size_t i = 0; i < fit.loop.pieces.size(); ++i)
      {
        const CurvePoint before = evaluate(fit.loop.pieces[i], 1.0);
        const CurvePoint after = evaluate(fit.loop.pieces[(i + 1) % fit.loop.pieces.size()], 0.0);
        CHECK((before.position - after.position).norm() < 1e-12);
        if (!is_corner(fit.loop, (i + 1) % fit.loop.pieces.size()))
          CHECK(before.curvature() == doctest::Approx(after.curvature()).epsilon(1e-6).scale(1.0));
      }
    }
  }
}

TEST_CASE("outliers are named and do not bend the curve")
{
  test::Scatter scatter(3);
  test::MeasuredLoop measured = test::measure(outline_loop(test::viola_outline()), 0.003, 1e-4, scatter);
  measured.points[20] *= 1.03;                      // about 6 mm outwards
  measured.points[200] += Vector2d(0.0015, 0.0015); // a caliper read wrong
  measured.points[340].y() *= 10.0;                 // a decimal point in the wrong place
  const CurveFit fit = fit_closed_curve(measured.points);
  REQUIRE(fit.report.outliers.size() == 3);
  CHECK(fit.report.outliers[0].point == 20);
  CHECK(fit.report.outliers[1].point == 200);
  CHECK(fit.report.outliers[2].point == 340);
  CHECK(std::abs(fit.report.outliers[0].residual) > 0.003);
  CHECK(fit.report.outliers[1].place == measured.points[200]);
  CHECK(rms_distance(fit.loop, outline_loop(test::viola_outline())) < 1e-4);
}

TEST_CASE("an f-hole with its corners marked keeps wings and nicks")
{
  const CurveLoop truth = soundhole_loops(FHole{.length = 0.080}, test::viola_outline())[0];
  test::Scatter scatter(1);
  const test::MeasuredLoop measured = test::measure(truth, 0.001, 5e-5, scatter);
  const CurveFit fit = fit_closed_curve(measured.points, measured.corners);
  CHECK(corners_of(fit.loop).size() == corners_of(truth).size());
  CHECK(enclosed_area(fit.loop) == test::relative(-enclosed_area(truth), 0.01));
  CHECK(rms_distance(fit.loop, truth) < 5e-5);
}

TEST_CASE("points that make no curve are refused")
{
  CHECK(says(refusal({{0.0, 0.0}, {0.1, 0.0}}), "at least 3 are needed; got 2"));
  CHECK(says(refusal({{0.0, 0.0}, {0.1, 0.0}, {0.0, 0.0}, {0.1, 0.0}}), "in one line"));
  CHECK(says(refusal({{0.0, 0.0}, {0.1, 0.0}, {0.2, 0.0}, {0.05, 0.0}}), "in one line"));
  CHECK(says(refusal({{0.0, 0.0}, {0.1, 0.0}, {std::nan(""), 0.1}}), "number 3 is not finite"));
  CHECK(says(refusal(std::vector<Vector2d>(200001, Vector2d(0.0, 0.0))), "at most 200000"));
  std::vector<Vector2d> points = ellipse_points(100);
  test::Scatter scatter(5);
  for (std::size_t i = points.size() - 1; i > 0; --i) // shuffled
    std::swap(points[i], points[static_cast<std::size_t>(scatter.uniform(0.0, static_cast<double>(i) + 0.999))]);
  CHECK(says(refusal(points), "not in order along a closed curve"));
  points = ellipse_points(100);
  std::swap_ranges(points.begin() + 10, points.begin() + 20, points.begin() + 55); // two stretches changed places
  CHECK(says(refusal(points), "not in order along a closed curve"));
}
