// SPDX-License-Identifier: MPL-2.0
#include "viola.h"

#include <plate/core/error.h>

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

using namespace plate;

namespace
{

/// Greatest and least |y| of the outline between two stations along the body, on the side y > 0 [m].
struct HalfWidths
{
  double least = HUGE_VAL;
  double greatest = 0.0;
};

HalfWidths half_widths(const Outline& outline, double from_x, double to_x)
{
  HalfWidths w;
  for (const Eigen::Vector2d& p : sample(outline_loop(outline), 2000))
    if (p.y() > 0.0 && p.x() >= from_x && p.x() <= to_x)
    {
      w.least = std::min(w.least, p.y());
      w.greatest = std::max(w.greatest, p.y());
    }
  return w;
}

} // namespace

TEST_CASE("the bouts outline has the given length and three widths, for violin, viola and cello")
{
  // Measures in mm: common practice, no source.
  const BoutsOutline makers[] = {{0.355, 0.206, 0.112, 0.168}, test::viola_outline(), {0.757, 0.440, 0.230, 0.340}};
  for (const BoutsOutline& o : makers)
  {
    CAPTURE(o.length);
    const std::vector<Eigen::Vector2d> points = sample(outline_loop(o), 2000);
    const auto by_x = [](const Eigen::Vector2d& a, const Eigen::Vector2d& b) { return a.x() < b.x(); };
    const auto [low, high] = std::minmax_element(points.begin(), points.end(), by_x);
    CHECK(high->x() - low->x() == doctest::Approx(o.length).epsilon(1e-9));
    // Sampling misses an extremum by the square of the step: a thousandth of a thousandth.
    const double L = o.length;
    CHECK(2.0 * half_widths(o, 0.1 * L, 0.5 * L).greatest == doctest::Approx(o.upper_bout).epsilon(1e-6));
    CHECK(2.0 * half_widths(o, -0.08 * L, 0.12 * L).least == doctest::Approx(o.centre_bout).epsilon(1e-6));
    CHECK(2.0 * half_widths(o, -0.5 * L, -0.15 * L).greatest == doctest::Approx(o.lower_bout).epsilon(1e-6));
    CHECK(outline_width(o) == doctest::Approx(o.lower_bout).epsilon(1e-12));
  }
}

TEST_CASE("the bouts outline is symmetric about the centre line and closed")
{
  const CurveLoop loop = outline_loop(test::viola_outline());
  const CurveLoop mirror = mirrored(loop);
  CHECK(enclosed_area(mirror) == doctest::Approx(enclosed_area(loop)).epsilon(1e-12));
  for (std::size_t i = 0; i < loop.pieces.size(); ++i)
  {
    const Eigen::Vector2d end = evaluate(loop.pieces[i], 1.0).position;
    const Eigen::Vector2d next = evaluate(loop.pieces[(i + 1) % loop.pieces.size()], 0.0).position;
    CHECK((end - next).norm() < 1e-12);
  }
  // Every point has its mirror image on the curve.
  const std::vector<Eigen::Vector2d> points = sample(loop, 64);
  for (const Eigen::Vector2d& p : points)
  {
    const auto is_image = [&](const Eigen::Vector2d& q) { return (Eigen::Vector2d(p.x(), -p.y()) - q).norm() < 1e-3; };
    CHECK(std::any_of(points.begin(), points.end(), is_image));
  }
}

TEST_CASE("the bouts outline has four corners of two edges each and is smooth elsewhere")
{
  const CurveLoop loop = outline_loop(test::viola_outline());
  int corners = 0;
  for (std::size_t i = 0; i < loop.pieces.size(); ++i)
    corners += is_corner(loop, i) ? 1 : 0;
  CHECK(corners == 8);
}

TEST_CASE("rectangle and ellipse enclose their textbook areas")
{
  CHECK(enclosed_area(outline_loop(RectangleOutline{0.35, 0.2})) == doctest::Approx(0.07).epsilon(1e-14));
  CHECK(enclosed_area(outline_loop(EllipseOutline{0.35, 0.2})) ==
        doctest::Approx(std::numbers::pi * 0.175 * 0.1).epsilon(1e-12));
}

TEST_CASE("outlines out of proportion or without size are refused")
{
  CHECK_THROWS_AS(static_cast<void>(outline_loop(BoutsOutline{0.405, 0.236, 0.020, 0.193})), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(outline_loop(BoutsOutline{0.405, 0.236, 0.200, 0.193})), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(outline_loop(RectangleOutline{-0.35, 0.2})), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(outline_loop(EllipseOutline{0.35, std::nan("")})), InvalidInput);
}
