// SPDX-License-Identifier: MPL-2.0
// Plates on boxes: tests/reference/data/air.csv.
#include "relative.h"
#include "sample_cavities.h"

#include <plate/core/error.h>
#include <plate/solvers/coupled_modes.h>

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace plate;

namespace
{

using std::numbers::pi;
constexpr Air air = test::plain_air;
constexpr double rho_c2 = air.density * air.sound_speed * air.sound_speed;

/// A plate that moves as a piston with its mass, over a uniform pressure, with a compact hole beside it or none.
struct Piston
{
  double frequency_hz = 430.0;
  double mass = 0.080; ///< [kg]
  double area = 0.020; ///< [m2]
  double volume = 2e-3;
  double conductance = 0.0598; ///< [m]
};

CoupledModes with_hole(const Piston& p, double loss = 0.0, double hole_loss = 0.0)
{
  return solve_coupled_modes(
      {.frequencies_hz = Eigen::VectorXd::Constant(1, p.frequency_hz), .loss = Eigen::VectorXd::Constant(1, loss)},
      {.inertance = Eigen::MatrixXd::Constant(1, 1, 1.0 / p.conductance),
       .loss = Eigen::VectorXd::Constant(1, hole_loss)},
      uniform_pressure(p.volume, Eigen::Vector2d(p.area / std::sqrt(p.mass), 1.0)), air);
}

} // namespace

TEST_CASE("plate and hole as two oscillators")
{
  // Independent values, [Computed2026]; the product of the two is that of plate and hole.
  const CoupledModes modes = with_hole({});
  CHECK(modes.frequencies_hz(0) == test::relative(286.435, 1e-5));
  CHECK(modes.frequencies_hz(1) == test::relative(448.379, 1e-5));
  CHECK(modes.rigid_frequencies_hz.size() == 0);
}

TEST_CASE("energies of plate and air make up the whole; both kinds are the same in sum over a mode")
{
  const Piston p;
  const CoupledModes modes = with_hole(p);
  for (Eigen::Index i = 0; i < 2; ++i)
  {
    CHECK(modes.strain_share.col(i).sum() == test::relative(1.0));
    CHECK(modes.kinetic_share.col(i).sum() == test::relative(1.0));
    const double w2 = std::pow(2.0 * pi * modes.frequencies_hz(i), 2);
    CHECK(modes.strain_share(1, i) ==
          test::relative(rho_c2 / p.volume * std::pow(modes.volume_change(i), 2) / w2, 1e-9));
    CHECK(modes.kinetic_share(1, i) ==
          test::relative(air.density / p.conductance * std::pow(modes.outflow(0, i), 2), 1e-9));
  }
  CHECK(modes.share_names == std::vector<std::string>{"structure", "air"});
}

TEST_CASE("parts of a structure share its energy")
{
  const double w2 = std::pow(2.0 * pi * 430.0, 2);
  const auto one = [](double value) { return Eigen::MatrixXd::Constant(1, 1, value); };
  const CoupledModes modes =
      solve_coupled_modes({.frequencies_hz = Eigen::VectorXd::Constant(1, 430.0),
                           .loss = {},
                           .parts = {{.name = "top", .stiffness = one(0.7 * w2), .mass = one(0.4)},
                                     {.name = "back", .stiffness = one(0.3 * w2), .mass = one(0.6)}}},
                          {}, uniform_pressure(2e-3, Eigen::VectorXd::Constant(1, 0.05)), air);
  CHECK(modes.share_names == std::vector<std::string>{"top", "back", "air"});
  CHECK(modes.strain_share(0, 0) / modes.strain_share(1, 0) == test::relative(7.0 / 3.0));
  CHECK(modes.kinetic_share(1, 0) == test::relative(0.6));
  CHECK(modes.kinetic_share(2, 0) == doctest::Approx(0.0).scale(1.0));
}

TEST_CASE("a resonator in free air radiates as its conductance says")
{
  // Q of a rigid vessel with a hole, without a flange: 4 pi / (k K), k^2 = K / V; half of it with one, [Pierce2019].
  const double K = 0.06;
  const double V = 2e-3;
  const CoupledModes modes = solve_coupled_modes({}, {.inertance = Eigen::MatrixXd::Constant(1, 1, 1.0 / K)},
                                                 uniform_pressure(V, Eigen::VectorXd::Ones(1)), air);
  CHECK(modes.frequencies_hz(0) == test::relative(air.sound_speed / (2.0 * pi) * std::sqrt(K / V)));
  CHECK(modes.radiation_loss(0) == test::relative(K * std::sqrt(K / V) / (4.0 * pi)));
}

TEST_CASE("loss of plate and hole by their shares of the energy")
{
  const CoupledModes modes = with_hole({}, 0.01, 0.03);
  for (Eigen::Index i = 0; i < 2; ++i)
  {
    CHECK(modes.structural_loss(i) == test::relative(0.01 * modes.strain_share(0, i), 1e-9));
    CHECK(modes.hole_loss(i) == test::relative(0.03 * modes.kinetic_share(1, i), 1e-9));
    CHECK(modes.loss()(i) == test::relative(modes.structural_loss(i) + modes.hole_loss(i) + modes.radiation_loss(i)));
  }
}

TEST_CASE("two equal holes: one mode of both, and a flow from one to the other without energy")
{
  const CoupledModes modes = solve_coupled_modes({}, {.inertance = Eigen::Matrix2d{{40.0, 3.0}, {3.0, 40.0}}},
                                                 uniform_pressure(2e-3, Eigen::VectorXd::Ones(2)), air);
  CHECK(modes.rigid_frequencies_hz.size() == 1);
  CHECK(modes.frequencies_hz.size() == 1);
  CHECK(modes.outflow(0, 0) == test::relative(modes.outflow(1, 0)));
  CHECK(modes.frequencies_hz(0) == test::relative(air.sound_speed / (2.0 * pi) * std::sqrt(2.0 / 43.0 / 2e-3)));
}

TEST_CASE("rigid motions that change no volume stay at rest and are set apart")
{
  const CoupledModes modes = solve_coupled_modes({.frequencies_hz = Eigen::Vector3d(0.0, 0.0, 400.0), .loss = {}}, {},
                                                 uniform_pressure(2e-3, Eigen::Vector3d(0.0, 0.0, 0.07)), air);
  CHECK(modes.rigid_frequencies_hz.size() == 2);
  CHECK(modes.rigid_motions.rows() == 3);
  CHECK(modes.frequencies_hz.size() == 1);
}

TEST_CASE("a piston in the end of a tube, with few cavity modes and their static rest")
{
  // Tube of length L closed by a piston of mass M per area: w tan... K - w^2 M = rho c w cot(w L / c) as a stiffness of
  // the piston, per area, the air standing as cos(w x / c). A root is found here by bisection.
  const double L = 0.35;
  const double side = 0.05;
  const double area = side * side;
  const double mass = 0.001;
  const double own = 2.0 * pi * 700.0;
  const auto excess = [&](double w)
  { return mass * (own * own - w * w) + rho_c2 / air.sound_speed * area * w / std::tan(w * L / air.sound_speed); };
  const CavityMesh mesh =
      test::cavity_over(test::rectangle(L, side, 12, 2, 1e-3), [=](double, double) { return side; });
  const CavitySpace space(mesh, 0);
  const CavityModes cavity = solve_cavity_modes(space, air, {.num_modes = 8});
  Eigen::VectorXd flow = Eigen::VectorXd::Zero(space.num_unknowns());
  for (int i = 0; i < 200; ++i)
    flow += *space.values_at({0.5 * L, -0.5 * side + side * (i + 0.5) / 200.0, 0.5 * side}) * area / 200.0;
  flow /= std::sqrt(mass);
  const CoupledModes modes =
      solve_coupled_modes({.frequencies_hz = Eigen::VectorXd::Constant(1, own / (2.0 * pi)), .loss = {}}, {},
                          air_moments(space, cavity, flow), air);
  const auto root_between = [&](double low, double high)
  {
    REQUIRE(excess(low) > 0.0);
    REQUIRE(excess(high) < 0.0);
    for (int i = 0; i < 60; ++i)
      (excess(0.5 * (low + high)) > 0.0 ? low : high) = 0.5 * (low + high);
    return low;
  };
  // Poles of the cotangent at 490 and 981 Hz.
  const double w = root_between(2.0 * pi * 300.0, 2.0 * pi * 489.0);
  const double second = root_between(2.0 * pi * 491.0, 2.0 * pi * 980.0);
  CHECK(modes.frequencies_hz(0) == test::relative(w / (2.0 * pi), 2e-4));
  CHECK(modes.frequencies_hz(1) == test::relative(second / (2.0 * pi), 5e-4));

  // The pressure stands as cos(w x / c) from the closed end.
  const Eigen::VectorXd p = cavity_pressures(space, cavity, flow, modes, air).col(0);
  const double at_end = space.values_at({-0.5 * L, 0.0, 0.0})->dot(p);
  for (const double x : {0.1, 0.2, 0.3})
    CHECK(space.values_at({x - 0.5 * L, 0.0, 0.0})->dot(p) ==
          doctest::Approx(at_end * std::cos(w * x / air.sound_speed)).epsilon(5e-3).scale(std::abs(at_end)));
  // At the piston the force of the pressure is what accelerates it: (own^2 - w^2) x = area p / sqrt(M).
  CHECK(area / std::sqrt(mass) * space.values_at({0.5 * L, 0.0, 0.0})->dot(p) ==
        test::relative((own * own - w * w) * modes.structure(0, 0), 5e-3));
}

TEST_CASE("sizes that do not fit and masses that are none are refused")
{
  const AirMoments one = uniform_pressure(2e-3, Eigen::VectorXd::Ones(1));
  CHECK_THROWS_AS(static_cast<void>(solve_coupled_modes({}, {}, one, air)), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(solve_coupled_modes(
                      {.frequencies_hz = Eigen::VectorXd::Ones(1), .loss = Eigen::VectorXd::Ones(2)}, {}, one, air)),
                  InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(solve_coupled_modes({}, {.inertance = Eigen::MatrixXd::Zero(1, 1)}, one, air)),
                  NumericalFailure);
}
