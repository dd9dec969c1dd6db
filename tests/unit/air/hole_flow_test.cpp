// SPDX-License-Identifier: MPL-2.0
// Ellipses and slots: tests/reference/data/air.csv.
#include "relative.h"
#include "sample_cavities.h"

#include <plate/air/hole_flow.h>
#include <plate/core/error.h>

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

using namespace plate;
using test::circle;

TEST_CASE("a round hole conducts its diameter, whatever its size, place and sense")
{
  // 2 r: [Rayleigh1896] sec. 306.
  CHECK(conductance(hole_flow({{.points = circle(0.02, {0.0, 0.0})}}).inertance()) == test::relative(0.04, 5e-3));
  std::vector<Eigen::Vector2d> backwards = circle(3e-3, {0.1, -0.2}, 0.3);
  std::reverse(backwards.begin(), backwards.end());
  CHECK(conductance(hole_flow({{.points = backwards}}).inertance()) == test::relative(6e-3, 5e-3));
}

TEST_CASE("finer cells come closer to a round hole's conductance, from above")
{
  // Every spread of the flow but the true one has more kinetic energy, so cells alone would give too little; that the
  // value lies above comes from charges that are points.
  const std::vector<HoleOutline> hole = {{.points = circle(0.02, {0.0, 0.0})}};
  const double coarse = conductance(hole_flow(hole, {.cells_across = 3}).inertance()) / 0.04 - 1.0;
  const double fine = conductance(hole_flow(hole, {.cells_across = 10}).inertance()) / 0.04 - 1.0;
  CHECK(std::abs(fine) < std::abs(coarse));
  CHECK(std::abs(fine) < 2.5e-3);
}

TEST_CASE("two round holes hinder each other as two discs of charge at a distance")
{
  // Far apart, the flow of one raises the pressure at the other as a point: inertance 1 / (2 pi d) on either side.
  const double apart = 0.2;
  const HoleFlow flow = hole_flow({{.points = circle(0.01, {0.0, 0.0})}, {.points = circle(0.01, {apart, 0.0})}});
  CHECK(flow.one_side(0, 1) == test::relative(1.0 / (2.0 * std::numbers::pi * apart), 5e-3));
  CHECK(flow.one_side(0, 0) == test::relative(1.0 / (4.0 * 0.01), 5e-3)); // one side of a conductance of 2 r
  CHECK(flow.one_side(0, 1) == flow.one_side(1, 0));
}

TEST_CASE("the neck adds its length over its area")
{
  const double radius = 0.01;
  const HoleFlow flow = hole_flow({{.points = circle(radius, {0.0, 0.0}), .wall_thickness = 3e-3}});
  const double area = std::numbers::pi * radius * radius;
  CHECK(flow.spread[0].area == test::relative(area, 5e-3));
  CHECK(flow.neck(0) == test::relative(3e-3 / area, 5e-3));
  CHECK(conductance(flow.inertance()) == test::relative(area / (3e-3 + area / (2.0 * radius)), 5e-3));
}

TEST_CASE("the flow crowds at the edge")
{
  // Share within radius s of a round hole: 1 - sqrt(1 - s^2 / r^2), from the density 1 / sqrt(r^2 - s^2).
  const HoleFlow flow = hole_flow({{.points = circle(1.0, {0.0, 0.0})}}, {.cells_across = 12});
  double inner = 0.0;
  for (std::size_t i = 0; i < flow.spread[0].points.size(); ++i)
    if (flow.spread[0].points[i].norm() < 0.8)
      inner += flow.spread[0].shares(static_cast<Eigen::Index>(i));
  CHECK(inner == test::relative(1.0 - 0.6, 0.05)); // cells are an eighth of the radius
  CHECK(flow.spread[0].shares.sum() == test::relative(1.0));
}

TEST_CASE("holes without area are refused")
{
  CHECK_THROWS_AS(static_cast<void>(hole_flow({})), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(hole_flow({{.points = {{0.0, 0.0}, {1.0, 0.0}}}})), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(hole_flow({{.points = {{0.0, 0.0}, {1.0, 0.0}, {2.0, 0.0}}}})), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(hole_flow({{.points = circle(1.0, {0.0, 0.0})}}, {.cells_across = 1})),
                  InvalidInput);
}
