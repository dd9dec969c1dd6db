// SPDX-License-Identifier: MPL-2.0
// Plate and beam: tests/reference/data/air.csv.
#include "relative.h"
#include "sample_cavities.h"

#include <plate/core/error.h>
#include <plate/solvers/forced_response.h>

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace plate;

namespace
{

using std::numbers::pi;
constexpr Air air = test::plain_air;

/// A mass on a spring.
ResponseModes oscillator(double frequency_hz, double loss, double mass)
{
  return {.frequencies_hz = Eigen::VectorXd::Constant(1, frequency_hz),
          .loss = Eigen::VectorXd::Constant(1, loss),
          .motion = Eigen::MatrixXd::Constant(1, 1, 1.0 / std::sqrt(mass)),
          .volumes = Eigen::MatrixXd::Constant(1, 1, 0.01 / std::sqrt(mass))};
}

} // namespace

TEST_CASE("a mass on a spring: stiffness below, loss at resonance, mass above")
{
  const double mass = 0.2;
  const double w0 = 2.0 * pi * 100.0;
  const ResponseModes modes = oscillator(100.0, 0.04, mass);
  const std::complex<double> at_resonance = mobility(modes, 100.0)(0, 0);
  CHECK(at_resonance.real() == test::relative(1.0 / (0.04 * mass * w0)));
  CHECK(at_resonance.imag() == doctest::Approx(0.0).scale(1.0));
  const double w = 2.0 * pi * 1.0;
  CHECK(mobility(modes, 1.0)(0, 0).imag() == test::relative(w / (mass * w0 * w0), 2e-3));
  const double high = 2.0 * pi * 1e4;
  CHECK(mobility(modes, 1e4)(0, 0).imag() == test::relative(-1.0 / (mass * high), 1e-3));
}

TEST_CASE("a rigid body: modes of 0 Hz give its mass and its turn")
{
  const double m = 0.5;
  const double inertia = 0.004;
  const double arm = 0.1;
  const ResponseModes modes = {
      .frequencies_hz = Eigen::Vector2d::Zero(),
      .loss = Eigen::Vector2d::Zero(),
      .motion = Eigen::Matrix2d{{1.0 / std::sqrt(m), arm / std::sqrt(inertia)}, {1.0 / std::sqrt(m), 0.0}},
      .volumes = {}};
  const double w = 2.0 * pi * 50.0;
  const Eigen::MatrixXcd Y = mobility(modes, 50.0);
  CHECK(Y(0, 0).imag() == test::relative(-(1.0 / m + arm * arm / inertia) / w));
  CHECK(Y(0, 1).imag() == test::relative(-1.0 / (m * w)));
  CHECK(Y(0, 1) == Y(1, 0));
}

TEST_CASE("the compliance of modes left out is a spring in series")
{
  ResponseModes modes = oscillator(100.0, 0.01, 1.0);
  const std::complex<double> without = mobility(modes, 40.0)(0, 0);
  modes.residual_compliance = Eigen::MatrixXd::Constant(1, 1, 2e-6);
  const std::complex<double> difference = mobility(modes, 40.0)(0, 0) - without;
  CHECK(difference.imag() == test::relative(2.0 * pi * 40.0 * 2e-6));
  CHECK(std::abs(difference.real()) < 1e-12);
}

TEST_CASE("coupled modes respond with their rigid motions")
{
  // Two masses of a structure: one that floats, 0.3 kg, one on a spring over a uniform pressure.
  const double mass = 0.3;
  const CoupledModes coupled = solve_coupled_modes({.frequencies_hz = Eigen::Vector2d(0.0, 400.0), .loss = {}}, {},
                                                   uniform_pressure(2e-3, Eigen::Vector2d(0.0, 0.02)), air);
  const ResponseModes modes = response_modes(coupled, Eigen::RowVector2d(1.0 / std::sqrt(mass), 0.0));
  CHECK(modes.frequencies_hz.size() == 2);
  CHECK(mobility(modes, 100.0)(0, 0).imag() == test::relative(-1.0 / (mass * 2.0 * pi * 100.0), 1e-6));
  CHECK(modes.volumes.rows() == 1);
  CHECK(std::abs(modes.volumes(0, 0)) == test::relative(0.02));
  CHECK_THROWS_AS(static_cast<void>(response_modes(coupled, Eigen::RowVectorXd::Ones(3))), InvalidInput);
}

TEST_CASE("sound of a piston above its resonance")
{
  // Far above, the volume acceleration per force is area / mass at every frequency: p = rho A / (4 pi r m) at 1 m.
  const double mass = 0.2;
  const ResponseModes modes = oscillator(5.0, 0.02, mass); // moves 0.01 m2
  const double pressure = air.density * 0.01 / (4.0 * pi * mass);
  const std::vector<BandLevel> bands = radiated_bands(modes, 0, air, 100.0, 1000.0);
  CHECK(bands.size() == 11);
  CHECK(bands.front().centre_hz == test::relative(100.0));
  CHECK(bands[1].centre_hz == test::relative(125.9, 1e-3)); // [IEC61260], exact centre of "125"
  CHECK(bands.back().centre_hz == test::relative(1000.0));
  for (const BandLevel& band : bands)
    CHECK(band.level_db == test::relative(20.0 * std::log10(pressure / 2e-5), 1e-3));
}

TEST_CASE("the mean square over a band of a sharp resonance is that of the resonance")
{
  // Integral over f of (w / ((w0^2 - w^2)^2 + (eta w0^2)^2)^(1/2))^2 about a sharp peak: 1 / (8 pi ... ) in closed form
  // pi / 2 * f0 eta * peak^2, the area under a resonance curve.
  const double loss = 0.005;
  const double mass = 0.1;
  const ResponseModes modes = oscillator(500.0, loss, mass);
  const double peak = 0.01 / (loss * mass * 2.0 * pi * 500.0); // volume velocity per force at 500 Hz
  const double width = 500.0 * (std::pow(10.0, 0.05) - std::pow(10.0, -0.05));
  const double pressure = air.density * 500.0 / 2.0 * peak * std::sqrt(0.5 * pi * 500.0 * loss / width);
  const std::vector<BandLevel> bands = radiated_bands(modes, 0, air, 500.0, 500.0);
  REQUIRE(bands.size() == 1);
  // The tails beyond the band are missing, about 2 loss / (pi 0.115), and the centre of the band is 501.2 Hz.
  CHECK(bands[0].level_db == test::relative(20.0 * std::log10(pressure / 2e-5), 3e-3));
}

TEST_CASE("frequencies at equal ratios, and decibels")
{
  const std::vector<double> f = log_frequencies(100.0, 1600.0, 5);
  CHECK(f.size() == 5);
  CHECK(f[1] == test::relative(200.0));
  CHECK(f[3] == test::relative(800.0));
  CHECK(f[4] == 1600.0);
  CHECK(mobility_level({0.0, -0.1}) == test::relative(-20.0));
  CHECK_THROWS_AS(static_cast<void>(log_frequencies(0.0, 10.0, 3)), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(log_frequencies(10.0, 10.0, 3)), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(log_frequencies(1.0, 10.0, 1)), InvalidInput);
}

TEST_CASE("responses without sense are refused")
{
  ResponseModes modes = oscillator(100.0, 0.01, 1.0);
  CHECK_THROWS_AS(static_cast<void>(mobility(modes, 0.0)), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(radiated_bands(modes, 1, air, 100.0, 200.0)), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(radiated_bands(modes, 0, air, 200.0, 100.0)), InvalidInput);
  modes.loss.resize(2);
  CHECK_THROWS_AS(static_cast<void>(mobility(modes, 100.0)), InvalidInput);
}
