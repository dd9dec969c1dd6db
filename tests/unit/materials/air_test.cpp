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

TEST_CASE("pressure of saturated steam")
{
  // Steam tables, from memory, [Pa].
  CHECK(saturation_pressure(0.01) == doctest::Approx(611.7).epsilon(2e-3));
  CHECK(saturation_pressure(20.0) == doctest::Approx(2339.0).epsilon(2e-3));
  CHECK(saturation_pressure(30.0) == doctest::Approx(4247.0).epsilon(2e-3));
}

TEST_CASE("dry air carries sound with the speed of an ideal gas of two atoms")
{
  // [Computed2026]: sqrt(1.4 R T / M), and the density of the same gas.
  const double temperatures[] = {10.0, 20.0, 30.0};
  const double speeds[] = {337.332, 343.237, 349.042};
  const double densities[] = {1.24661, 1.20408, 1.16437};
  for (int i = 0; i < 3; ++i)
  {
    const Air air = air_in({.temperature = temperatures[i], .humidity = 0.0});
    CHECK(air.sound_speed == doctest::Approx(speeds[i]).epsilon(3e-5));
    CHECK(air.density == doctest::Approx(densities[i]).epsilon(3e-5));
  }
}

TEST_CASE("damp air is lighter and faster")
{
  // Tables for 20 deg C and 50 %, from memory: 1.199 kg/m3, 343.99 m/s; dry 1.2041 and 343.37, real gases both.
  const Air damp = air_in({.temperature = 20.0, .humidity = 0.5});
  CHECK(damp.density == doctest::Approx(1.1988).epsilon(5e-4));
  CHECK(damp.sound_speed == doctest::Approx(343.99).epsilon(5e-4));
  CHECK(damp.sound_speed / air_in({.temperature = 20.0, .humidity = 0.0}).sound_speed ==
        doctest::Approx(343.99 / 343.37).epsilon(2e-4));
  CHECK_THROWS_AS(static_cast<void>(air_in({.temperature = 20.0, .humidity = 50.0})), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(air_in({.temperature = 200.0, .humidity = 0.5})), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(air_in({.temperature = NAN, .humidity = 0.5})), InvalidInput);
}
