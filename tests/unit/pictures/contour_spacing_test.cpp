// SPDX-License-Identifier: MPL-2.0
#include "pictures/contour_spacing.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace plate;

TEST_CASE("Contours that run together are left out where they do, and only there")
{
  // Three levels: the second comes within 1 of the first for x < 50 and is 10 away from both beyond; the third is
  // alone.
  const std::vector<std::vector<Polyline>> levels = {
      {{.points = {{0.0, 0.0}, {100.0, 0.0}}}},
      {{.points = {{0.0, 1.0}, {50.0, 1.0}, {50.0, 10.0}, {100.0, 10.0}}}},
      {{.points = {{0.0, 20.0}, {100.0, 20.0}}}}};
  const std::vector<std::vector<Polyline>> left = without_crowds(levels, 2.0);
  REQUIRE(left.size() == 3);
  REQUIRE(left[0].size() == 1);
  CHECK(left[0][0].points.front()[0] == doctest::Approx(51.5).epsilon(0.03));
  CHECK(length(left[0][0]) == doctest::Approx(48.0).epsilon(0.05));
  REQUIRE(left[1].size() == 1);
  CHECK(left[1][0].points.front()[1] >= 2.0);
  CHECK(length(left[1][0]) == doctest::Approx(58.0).epsilon(0.05));
  REQUIRE(left[2].size() == 1);
  CHECK(length(left[2][0]) == doctest::Approx(100.0));
}

TEST_CASE("A closed contour crowded on one side stays in one piece around the other")
{
  Polyline circle{.points = {}, .closed = true};
  for (int i = 0; i < 360; ++i) // begins at the free side
    circle.points.emplace_back(50.0 * std::cos(i * std::numbers::pi / 180.0),
                               50.0 * std::sin(i * std::numbers::pi / 180.0));
  const Polyline wall{.points = {{-51.0, -100.0}, {-51.0, 100.0}}};
  const std::vector<std::vector<Polyline>> left = without_crowds({{circle}, {wall}}, 3.0);
  REQUIRE(left[0].size() == 1);
  CHECK_FALSE(left[0][0].closed);
  // Nearer than 3 to the wall: x < -48, an arc of 2 acos(48/50).
  const double crowded = 2.0 * std::acos(48.0 / 50.0) * 50.0;
  CHECK(length(left[0][0]) == doctest::Approx(2.0 * std::numbers::pi * 50.0 - crowded).epsilon(0.03));
}
