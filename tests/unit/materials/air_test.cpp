// SPDX-License-Identifier: MPL-2.0
#include <plate/core/error.h>
#include <plate/materials/air.h>

#include <doctest/doctest.h>

#include <cmath>

using namespace plate;

TEST_CASE("density of dry air")
{
  CHECK(air_density(15.0) == doctest::Approx(1.2250).epsilon(5e-5)); // [ISO2533] at sea level
  CHECK(air_density(0.0) == doctest::Approx(1.2922).epsilon(1e-4));  // common tables, from memory
  CHECK_THROWS_AS(static_cast<void>(air_density(-300.0)), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(air_density(NAN)), InvalidInput);
}
