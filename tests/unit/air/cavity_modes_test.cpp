// SPDX-License-Identifier: MPL-2.0
#include "relative.h"
#include "sample_cavities.h"

#include <plate/core/error.h>
#include <plate/solvers/cavity_modes.h>

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace plate;

namespace
{

using std::numbers::pi;
constexpr double c = test::plain_air.sound_speed;

/// Number of unknowns of grad p . grad p that a polynomial of the space must give exactly.
double gradient_energy(const CavitySpace& space, const Eigen::VectorXd& p)
{
  return p.dot(space.gradient_form().selfadjointView<Eigen::Lower>() * p);
}

} // namespace

TEST_CASE("a pressure that rises along x or z has the energy of its gradient, in a sheared and growing cavity too")
{
  // Back z = -0.01 - 0.1 x, top z = 0.03 + 0.2 x + 0.1 y: pressure z lies in the space of degree 1.
  CavityMesh mesh = test::cavity_over(test::rectangle(0.2, 0.1, 3, 2, 1e-3),
                                      [](double x, double y) { return 0.03 + 0.2 * x + 0.1 * y; });
  for (Eigen::Index i = 0; i < mesh.back.size(); ++i)
    mesh.back(i) = -0.01 - 0.1 * mesh.planform.nodes[static_cast<std::size_t>(i)].x();
  const double volume = 0.2 * 0.1 * 0.04;
  const CavitySpace space(mesh, 1);
  CHECK(space.volume() == test::relative(volume, 1e-12));
  Eigen::VectorXd z(space.num_unknowns());
  Eigen::VectorXd x = Eigen::VectorXd::Zero(space.num_unknowns());
  for (Eigen::Index i = 0; i < mesh.back.size(); ++i)
  {
    z(2 * i) = 0.5 * (mesh.top(i) + mesh.back(i));
    z(2 * i + 1) = 0.5 * (mesh.top(i) - mesh.back(i));
    x(2 * i) = mesh.planform.nodes[static_cast<std::size_t>(i)].x();
  }
  CHECK(gradient_energy(space, z) == test::relative(volume, 1e-10));
  CHECK(gradient_energy(space, x) == test::relative(volume, 1e-10));
  CHECK(space.values_at({0.03, 0.02, 0.011})->dot(z) == test::relative(0.011, 1e-10));
  CHECK(space.values_at({0.03, 0.02, 0.5})->dot(z) == test::relative(0.03 + 0.2 * 0.03 + 0.1 * 0.02, 1e-10));
  CHECK_FALSE(space.values_at({0.3, 0.02, 0.0}));
}

TEST_CASE("a wedge that thins out to nothing at one edge has the modes of a Bessel function")
{
  // h = x / 10 over 0 < x < 0.3: (x p')' + k^2 x p = 0, so p = J0(k x) and J1(0.3 k) = 0; with cos(n pi y / 0.1) the
  // squares of the wave numbers add up. First zero of J1: 3.831705970 (common tables, from memory).
  const CavityMesh mesh =
      test::cavity_over(test::rectangle(0.3, 0.1, 10, 4, 1e-3), [](double x, double) { return 0.1 * (x + 0.15); });
  const CavityModes modes = solve_cavity_modes(CavitySpace(mesh, 0), test::plain_air, {.num_modes = 6});
  const double first = c * 3.831705970 / 0.3 / (2.0 * pi);
  const double second = c * 7.015586670 / 0.3 / (2.0 * pi);
  const double across = c / (2.0 * 0.1);
  CHECK(modes.status == Status::converged);
  CHECK(modes.frequencies_hz(0) == test::relative(first, 2e-4));
  CHECK(modes.frequencies_hz(1) == test::relative(second, 5e-4));
  CHECK(modes.frequencies_hz(2) == test::relative(across, 2e-4));
  CHECK(modes.frequencies_hz(3) == test::relative(std::hypot(first, across), 5e-4));
  // With pressures that vary over the height the thin edge must not fail. A slope of 1/10 is a sector of 5.7 degrees:
  // the same wave equation in polar coordinates, exact with the radius in place of x.
  const CavityModes round = solve_cavity_modes(CavitySpace(mesh, 2), test::plain_air, {.num_modes = 2});
  CHECK(round.frequencies_hz(0) == test::relative(first, 5e-3));
  CHECK(round.residuals.maxCoeff() < 1e-6);
}

TEST_CASE("modes of a box in three dimensions, those across its height too")
{
  // Closed form: c/2 times the length of (l/a, m/b, n/h).
  const CavityMesh mesh = test::cavity_over(test::rectangle(0.3, 0.2, 4, 3, 1e-3), [](double, double) { return 0.25; });
  const CavitySpace space(mesh, 4);
  const CavityModes modes = solve_cavity_modes(space, test::plain_air, {.num_modes = 4});
  CHECK(modes.frequencies_hz(0) == test::relative(c / 2.0 / 0.3, 1e-3));
  CHECK(modes.frequencies_hz(1) == test::relative(c / 2.0 / 0.25, 1e-3));
  CHECK(modes.frequencies_hz(2) == test::relative(c / 2.0 / 0.2, 1e-3));
  CHECK(modes.frequencies_hz(3) == test::relative(c / 2.0 * std::hypot(1.0 / 0.3, 1.0 / 0.25), 1e-3));
  const Eigen::MatrixXd gram =
      modes.shapes.transpose() * (space.value_form().selfadjointView<Eigen::Lower>() * modes.shapes);
  CHECK((gram - Eigen::MatrixXd::Identity(4, 4)).cwiseAbs().maxCoeff() < 1e-9);
}

TEST_CASE("static pressure under a lid that moves as a cosine")
{
  // Potential cosh(k z) cos(k x) / (k sinh(k h)) for a lid that moves as cos(k x): inertance integral of its value on
  // the lid times cos(k x), a b coth(k h) / (2 k).
  const double length = 0.35;
  const double width = 0.2;
  const double height = 0.035;
  const double k = 2.0 * pi / length;
  const CavityMesh mesh = test::box(14, 8);
  const CavitySpace space(mesh, 3);
  const CavityModes modes = solve_cavity_modes(space, test::plain_air, {.num_modes = 3});
  Eigen::VectorXd flow = Eigen::VectorXd::Zero(space.num_unknowns());
  constexpr int steps = 280;
  for (int i = 0; i < steps; ++i)
    for (int j = 0; j < 80; ++j)
    {
      const double x = -0.5 * length + length * (i + 0.5) / steps;
      const double y = -0.5 * width + width * (j + 0.5) / 80.0;
      flow += *space.values_at({x, y, height}) * std::cos(k * (x + 0.5 * length)) * length * width / (80.0 * steps);
    }
  const AirMoments moments = air_moments(space, modes, flow);
  CHECK(moments.inertance(0, 0) == test::relative(length * width / (2.0 * k * std::tanh(k * height)), 1e-3));
  CHECK(std::abs(moments.volume_change(0)) < 1e-6 * length * width);
  CHECK(moments.volume == test::relative(length * width * height, 1e-12));
  // The second mode along x is the third of all (490, 858, 981 Hz); psi = sqrt(2 / V) cos(k x).
  CHECK(std::abs(moments.b(2, 0)) == test::relative(length * width / std::sqrt(2.0 * length * width * height), 2e-3));
}

TEST_CASE("wrong questions about a cavity are refused")
{
  const CavityMesh mesh = test::box(2, 2);
  CHECK_THROWS_AS(CavitySpace(mesh, -1), InvalidInput);
  const CavitySpace space(mesh, 0);
  CHECK_THROWS_AS(static_cast<void>(solve_cavity_modes(space, {.density = 1.2, .sound_speed = 0.0})), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(solve_cavity_modes(space, test::plain_air, {.num_modes = 49})), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(static_pressures(space, Eigen::MatrixXd::Zero(3, 1))), InvalidInput);
}
