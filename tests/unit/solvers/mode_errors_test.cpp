// SPDX-License-Identifier: MPL-2.0
// Error bars where the exact frequency is known. tests/accuracy has whole plates.
#include "sample_models.h"

#include <plate/core/error.h>
#include <plate/solvers/mode_errors.h>

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <numbers>

using namespace plate;

namespace
{

constexpr double length = 0.3;    // [m]
constexpr double width = 0.1;     // [m]
constexpr double E = 10e9;        // [Pa]
constexpr double density = 500.0; // [kg/m3]

/// Frequency of a hinged beam with shear (5/6) and rotary inertia, [Timoshenko1921], lowest mode: the root of
/// (S k^2 - m w2)(D k^2 + S - J w2) = S^2 k^2 [Hz].
double exact_frequency(double thickness)
{
  const double k = std::numbers::pi / length;
  const double S = 5.0 / 6.0 * E / 2.0 * thickness;
  const double D = E * std::pow(thickness, 3) / 12.0;
  const double m = density * thickness;
  const double J = density * std::pow(thickness, 3) / 12.0;
  const double b = m * (D * k * k + S) + J * S * k * k;
  const double c = S * k * k * D * k * k;
  const double w2 = 2.0 * c / (b + std::sqrt(b * b - 4.0 * m * J * c));
  return std::sqrt(w2) / (2.0 * std::numbers::pi);
}

/// A plate without Poisson contraction, hinged on two sides: its first mode is that of the beam.
Model hinged_strip(double thickness, int cells)
{
  Model model = test::plate_model(test::rectangle(length, width, cells, 1, thickness),
                                  test::solid(test::isotropic(E, 0.0, density), thickness));
  model.supports = {{.group = "x-", .support = EdgeSupport::hinged}, {.group = "x+", .support = EdgeSupport::hinged}};
  return model;
}

struct ErrorAndBar
{
  double error; // true [Hz]
  double bar;   // [Hz]
};

ErrorAndBar first_mode(const Model& model, double exact)
{
  const System system = assemble(model);
  const ModalResult modes = solve_modes(system, {.num_modes = 2, .tolerance = 1e-13});
  return {modes.frequencies_hz[0] - exact, mode_errors(model, system, modes)[0]};
}

} // namespace

TEST_CASE("the bar of a hinged beam covers its true error and is below ten times that, thick or thin")
{
  // Triangles from twice to 150 times as long as the beam is thick; two or four to a half-wave.
  for (const double thickness : {0.04, 0.005, 0.001})
    for (const int cells : {2, 4})
    {
      const ErrorAndBar mode = first_mode(hinged_strip(thickness, cells), exact_frequency(thickness));
      MESSAGE("thickness ", thickness, " m, ", cells, " cells: error ", mode.error, " Hz, bar ", mode.bar);
      CHECK(mode.error > 0.0);
      CHECK(mode.error < mode.bar);
      CHECK(mode.bar < 10.0 * mode.error);
    }
}

TEST_CASE("bars of a free plate without strips along its edges cover the edge layer that such a mesh misses")
{
  // First-order shear with a resolved edge layer: tests/reference/data/first_order_shear.csv, FV12, there to 1e-4.
  constexpr std::array<double, 3> reference = {1.6186, 2.3592, 2.9218}; // [Hz]
  const Model model = test::plate_model(test::rectangle(10.0, 10.0, 4, 4, 0.05),
                                        test::solid(test::isotropic(200e9, 0.3, 8000.0), 0.05));
  const System system = assemble(model);
  const ModalResult modes = solve_modes(system, {.num_modes = 3});
  const Eigen::VectorXd bars = mode_errors(model, system, modes);
  for (Eigen::Index mode = 0; mode < bars.size(); ++mode)
  {
    const double error = modes.frequencies_hz[mode] - reference[static_cast<std::size_t>(mode)];
    MESSAGE("mode ", mode + 1, ": error ", error, " Hz, bar ", bars[mode]);
    CHECK(error < bars[mode]);
    CHECK(bars[mode] < 10.0 * error);
  }
}

TEST_CASE("modes of another system are refused")
{
  const Model coarse = hinged_strip(0.01, 1);
  const Model fine = hinged_strip(0.01, 2);
  const System system = assemble(fine);
  CHECK_THROWS_AS(static_cast<void>(mode_errors(coarse, assemble(coarse), solve_modes(system, {.num_modes = 2}))),
                  InvalidInput);
}
