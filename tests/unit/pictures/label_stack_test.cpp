// SPDX-License-Identifier: MPL-2.0
#include "pictures/axis.h"
#include "pictures/label_stack.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <vector>

using plate::stacked;

TEST_CASE("Labels with room stay where they are wanted")
{
  const std::vector<double> wanted = {50.0, 10.0, 90.0};
  CHECK(stacked(wanted, 20.0, 0.0, 100.0) == wanted);
}

TEST_CASE("Two labels wanted at one place move apart by the same amount")
{
  const std::vector<double> places = stacked({40.0, 40.0}, 10.0, 0.0, 100.0);
  CHECK(places[0] == doctest::Approx(35.0));
  CHECK(places[1] == doctest::Approx(45.0));
}

TEST_CASE("A crowd keeps order and spacing, and stays inside the limits")
{
  const std::vector<double> places = stacked({5.0, 3.0, 4.0, 97.0, 99.0}, 8.0, 2.0, 98.0);
  CHECK(places[1] == doctest::Approx(2.0));
  CHECK(places[2] == doctest::Approx(10.0));
  CHECK(places[0] == doctest::Approx(18.0));
  CHECK(places[3] == doctest::Approx(90.0));
  CHECK(places[4] == doctest::Approx(98.0));
}

TEST_CASE("Axis ticks are round numbers inside the range, with the decimals they need")
{
  const plate::Ticks scale = plate::round_ticks(0.7, 1.3, 6);
  REQUIRE(scale.values.size() == 7);
  CHECK(scale.values.front() == doctest::Approx(0.7));
  CHECK(scale.values.back() == doctest::Approx(1.3));
  CHECK(scale.decimals == 1);
  const plate::Ticks hertz = plate::round_ticks(43.0, 861.0, 8);
  CHECK(hertz.values.front() == doctest::Approx(100.0));
  CHECK(hertz.values.back() == doctest::Approx(800.0));
  CHECK(hertz.decimals == 0);
}
