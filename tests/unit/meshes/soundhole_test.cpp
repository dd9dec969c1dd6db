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

struct Box
{
  Eigen::Vector2d low = {HUGE_VAL, HUGE_VAL};
  Eigen::Vector2d high = {-HUGE_VAL, -HUGE_VAL};
};

Box box_of(const CurveLoop& loop)
{
  Box box;
  for (const Eigen::Vector2d& p : sample(loop, 400))
  {
    box.low = box.low.cwiseMin(p);
    box.high = box.high.cwiseMax(p);
  }
  return box;
}

} // namespace

TEST_CASE("an f-hole has the given length, sits where it is told and is mirrored")
{
  const FHole hole{.length = 0.080, .where = Eigen::Vector2d(-0.02, 0.045)};
  const std::vector<CurveLoop> loops = soundhole_loops(hole, test::viola_outline());
  REQUIRE(loops.size() == 2);
  const Box box = box_of(loops[0]);
  CHECK(box.high.x() - box.low.x() == doctest::Approx(0.080).epsilon(1e-4));
  CHECK(box.low.y() > 0.0);
  const Box image = box_of(loops[1]);
  CHECK(image.high.y() == doctest::Approx(-box.low.y()).epsilon(1e-9));
  for (const CurveLoop& loop : loops)
    CHECK(enclosed_area(loop) < 0.0); // clockwise: the plate to the left
  CHECK(soundhole_loops(FHole{.mirror = false}, test::viola_outline()).size() == 1);
}

TEST_CASE("the eyes of an f-hole are round, of the given diameters, the lower one further out")
{
  const FHole hole =
      f_hole_with_defaults({.length = 0.080, .upper_eye = 0.0066, .lower_eye = 0.0092}, test::viola_outline());
  const CurveLoop loop = soundhole_loops(hole, test::viola_outline())[0];
  // The eyes' circles are the only arcs with equal half axes.
  std::vector<EllipticArc> eyes;
  for (const CurvePiece& piece : loop.pieces)
    if (const auto* arc = std::get_if<EllipticArc>(&piece); arc && std::abs(arc->u.norm() - arc->v.norm()) < 1e-12)
      eyes.push_back(*arc);
  REQUIRE(eyes.size() >= 2);
  const auto [lower, upper] = std::minmax_element(
      eyes.begin(), eyes.end(), [](const EllipticArc& a, const EllipticArc& b) { return a.centre.x() < b.centre.x(); });
  CHECK(upper->u.norm() == doctest::Approx(0.0033).epsilon(1e-12));
  CHECK(lower->u.norm() == doctest::Approx(0.0046).epsilon(1e-12));
  CHECK(lower->centre.y() > upper->centre.y());
  const Eigen::Vector2d middle = 0.5 * (lower->centre + upper->centre);
  CHECK((middle - *hole.where).norm() < 1e-12);
  const Eigen::Vector2d line = upper->centre - lower->centre;
  CHECK(std::atan2(-line.y(), line.x()) == doctest::Approx(hole.tilt->in_radians()).epsilon(1e-9));
}

TEST_CASE("f-hole measures left out follow the plate")
{
  const FHole small = f_hole_with_defaults({}, BoutsOutline{0.355, 0.206, 0.112, 0.168});
  const FHole large = f_hole_with_defaults({}, BoutsOutline{0.710, 0.412, 0.224, 0.336});
  CHECK(*large.length == doctest::Approx(2.0 * *small.length).epsilon(1e-12));
  CHECK(*large.stem == doctest::Approx(2.0 * *small.stem).epsilon(1e-12));
  CHECK((*large.where - 2.0 * *small.where).norm() < 1e-12);
  // Violin: f-holes of about 75 mm, eyes 6 to 6.5 and 8.5 to 9 mm, stem 6 to 6.5 mm: common practice, no source.
  CHECK(*small.length == doctest::Approx(0.075).epsilon(0.1));
  CHECK(*small.upper_eye == doctest::Approx(0.0060).epsilon(0.15));
  CHECK(*small.lower_eye == doctest::Approx(0.0085).epsilon(0.15));
  CHECK(*small.stem == doctest::Approx(0.0060).epsilon(0.15));
}

TEST_CASE("impossible f-holes are refused")
{
  const Outline outline = test::viola_outline();
  CHECK_THROWS_AS(static_cast<void>(f_hole_with_defaults({.length = -0.08}, outline)), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(f_hole_with_defaults({.length = 0.08, .upper_eye = 0.03}, outline)), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(f_hole_with_defaults({.stem = 0.03}, outline)), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(f_hole_with_defaults({.tilt = Angle::degrees(20.0)}, outline)), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(f_hole_with_defaults({.tilt = Angle::degrees(80.0)}, outline)), InvalidInput);
}

TEST_CASE("a slot covers a rectangle and two half discs")
{
  const Slot slot{.centre = {-0.02, 0.06}, .length = 0.070, .width = 0.006, .angle = Angle::degrees(-12.0)};
  const std::vector<CurveLoop> loops = soundhole_loops(slot, test::viola_outline());
  REQUIRE(loops.size() == 2);
  const double area = 0.064 * 0.006 + std::numbers::pi * 0.003 * 0.003;
  CHECK(enclosed_area(loops[0]) == doctest::Approx(-area).epsilon(1e-9));
}

TEST_CASE("a hole along any curve is turned so that the plate lies to its left")
{
  const CurveLoop square = test::polygon({{0.0, 0.02}, {0.01, 0.02}, {0.01, 0.03}, {0.0, 0.03}});
  for (const CurveLoop& loop : {square, reversed(square)})
  {
    CHECK(enclosed_area(soundhole_loops(CurveHole{loop, false}, test::viola_outline())[0]) ==
          doctest::Approx(-1e-4).epsilon(1e-12));
    CHECK(soundhole_loops(CurveHole{loop}, test::viola_outline()).size() == 2);
  }
}
