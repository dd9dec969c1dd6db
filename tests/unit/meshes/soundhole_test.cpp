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

/// From the rim of the lower eye to the outline, measured on the curves themselves [m].
double lower_eye_to_edge(const FHole& hole, const Outline& outline)
{
  Eigen::Vector2d centre(HUGE_VAL, 0.0);
  double radius = 0.0;
  const CurveLoop loop = soundhole_loops(hole, outline)[0];
  for (const CurvePiece& piece : loop.pieces)
    if (const auto* arc = std::get_if<EllipticArc>(&piece);
        arc && std::abs(arc->u.norm() - arc->v.norm()) < 1e-12 && arc->centre.x() < centre.x())
    {
      centre = arc->centre;
      radius = arc->u.norm();
    }
  double nearest = HUGE_VAL;
  for (const Eigen::Vector2d& p : sample(outline_loop(outline), 400))
    nearest = std::min(nearest, (p - centre).norm());
  return nearest - radius;
}

} // namespace

TEST_CASE("an f-hole has the given length, sits where it is told and is mirrored")
{
  const FHole hole{.length = 0.080, .where = Eigen::Vector2d(-0.02, 0.045)};
  const std::vector<CurveLoop> loops = soundhole_loops(hole, test::viola_outline());
  REQUIRE(loops.size() == 2);
  const Box box = box_of(loops[0]);
  CHECK(box.high.x() - box.low.x() == test::relative(0.080, 1e-4));
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

TEST_CASE("f-hole measures left out are the usual ones of the plate")
{
  // Ranges of makers for violin, small, middle and large viola, cello, in whole mm, so half a mm
  // is left at both ends: common practice, no source.
  struct Usual
  {
    BoutsOutline plate;
    double length[2], between_upper_eyes[2], lower_eye_to_edge[2];
  };
  const Usual rows[] = {
      {{0.355, 0.206, 0.112, 0.168}, {74.5, 75.5}, {41.5, 42.5}, {11.5, 12.5}},
      {{0.390, 0.228, 0.127, 0.188}, {77.5, 82.5}, {45.5, 50.5}, {12.5, 15.5}},
      {{0.405, 0.236, 0.131, 0.193}, {77.5, 82.5}, {45.5, 50.5}, {12.5, 15.5}},
      {{0.430, 0.250, 0.140, 0.200}, {77.5, 82.5}, {45.5, 50.5}, {12.5, 15.5}},
      {{0.757, 0.440, 0.230, 0.340}, {134.5, 145.5}, {87.5, 95.5}, {19.5, 25.5}},
  };
  for (const Usual& row : rows)
  {
    CAPTURE(row.plate.length);
    const FHole hole = f_hole_with_defaults({}, row.plate);
    const Box box = box_of(soundhole_loops(hole, row.plate)[0]);
    const double length = 1e3 * (box.high.x() - box.low.x());
    CHECK(length > row.length[0]);
    CHECK(length < row.length[1]);
    CHECK(2e3 * box.low.y() > row.between_upper_eyes[0]);
    CHECK(2e3 * box.low.y() < row.between_upper_eyes[1]);
    const double gap = 1e3 * lower_eye_to_edge(hole, row.plate);
    CHECK(gap > row.lower_eye_to_edge[0]);
    CHECK(gap < row.lower_eye_to_edge[1]);
  }
}

TEST_CASE("eyes and stem of a violin's f-hole are the usual ones")
{
  const FHole violin = f_hole_with_defaults({}, BoutsOutline{0.355, 0.206, 0.112, 0.168});
  // Eyes 6 to 6.5 and 8.5 to 9 mm, stem 6 to 6.5 mm: common practice, no source.
  CHECK(*violin.upper_eye == test::relative(6.25e-3, 0.041));
  CHECK(*violin.lower_eye == test::relative(8.75e-3, 0.029));
  CHECK(*violin.stem == test::relative(6.25e-3, 0.041));
}

TEST_CASE("beyond violin and cello an f-hole keeps its proportion to the plate")
{
  for (const double length : {0.355, 0.757})
  {
    const double factor = length < 0.5 ? 0.5 : 2.0;
    const FHole usual = f_hole_with_defaults({}, EllipseOutline{length, 0.6 * length});
    const FHole scaled = f_hole_with_defaults({}, EllipseOutline{factor * length, 0.6 * factor * length});
    CHECK(*scaled.length == doctest::Approx(factor * *usual.length).epsilon(1e-12));
    CHECK(*scaled.stem == doctest::Approx(factor * *usual.stem).epsilon(1e-12));
    CHECK((*scaled.where - factor * *usual.where).norm() < 1e-12);
  }
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
