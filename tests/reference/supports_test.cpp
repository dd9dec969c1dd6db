// SPDX-License-Identifier: MPL-2.0
// What the supports hold, seen in frequencies. Rest holds z; hinged x, y and z; clamped these and the rotations. On a
// flat plate rest and hinged are the same, for bending moves nothing in the plane; on an arch the hinges take its
// thrust.
#include "sample_models.h"

#include <plate/solvers/modal.h>

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace plate;

namespace
{

using std::numbers::pi;

double first_frequency(const Model& model)
{
  return solve_modes(assemble(model), {.num_modes = 1}).frequencies_hz(0);
}

/// A steel square of side 1 m and 2.5 mm: thin, so that a support that leaves the turn along the edge free takes
/// little.
double square_lambda(EdgeSupport support)
{
  constexpr double side = 1.0;
  constexpr double thickness = 2.5e-3;
  const std::vector<double> lines = test::lines_with_strips(0.5 * side, 20, 1.2 * thickness);
  Model model =
      test::plate_model(test::grid_mesh({.x = lines, .y = lines, .surface = test::flat(), .thickness = thickness}),
                        test::solid(test::isotropic(200e9, 0.3, 8000.0), thickness));
  test::support_all_sides(model, support);
  const double D = 200e9 * std::pow(thickness, 3) / (12.0 * (1.0 - 0.3 * 0.3));
  return 2.0 * pi * first_frequency(model) * side * side * std::sqrt(8000.0 * thickness / D);
}

/// A strip between two supports, 300 mm long and 1 mm thick, bent to half a sine of a given rise.
double arch_frequency(double rise, EdgeSupport support)
{
  constexpr double length = 0.3;
  constexpr double thickness = 1e-3;
  const auto slope = [=](double x) { return -rise * pi / length * std::sin(pi * x / length); };
  const test::Surface sine = {
      .position = [=](double x, double y) { return Eigen::Vector3d(x, y, rise * std::cos(pi * x / length)); },
      .normal = [=](double x, double) { return Eigen::Vector3d(-slope(x), 0.0, 1.0).normalized(); }};
  test::GridPlate grid = {.x = {}, .y = {-0.01, 0.0, 0.01}, .surface = sine, .thickness = thickness};
  for (int i = 0; i <= 16; ++i)
    grid.x.push_back(length * (i / 16.0 - 0.5));
  Model model = test::plate_model(test::grid_mesh(grid), test::solid(test::isotropic(10e9, 0.0, 500.0), thickness));
  model.supports = {{.group = "x-", .support = support}, {.group = "x+", .support = support}};
  return first_frequency(model);
}

/// Of a flat beam with the given (root of the frequency equation)^2.
double beam_frequency(double root_squared)
{
  return root_squared / (2.0 * pi * 0.3 * 0.3) * std::sqrt(10e9 * 1e-6 / (12.0 * 500.0));
}

} // namespace

TEST_CASE("a flat square: resting and hinged are alike, clamped is another plate")
{
  // [Leissa1973]: 19.7392 simply supported, 35.9852 clamped (precise values as in data/thin_plates.csv). Tolerance: a
  // support that holds displacements only is softer by 0.11 % at a thickness of 1/400, shear takes 0.01 % of the
  // clamped.
  const double resting = square_lambda(EdgeSupport::rest);
  CHECK(resting == doctest::Approx(19.7392).epsilon(2e-3));
  CHECK(square_lambda(EdgeSupport::hinged) == doctest::Approx(resting).epsilon(1e-9));
  CHECK(square_lambda(EdgeSupport::clamped) == doctest::Approx(35.9852).epsilon(1e-3));
}

TEST_CASE("a shallow arch: resting it bends as a beam, hinged it is pressed along itself")
{
  // Shallow arch of rise b and thickness t on hinges, w = sin: the ends hold a thrust E A b pi^2/(2 L^2) per
  // deflection, so f^2 = f0^2 (1 + A b^2/(2 I)) = f0^2 (1 + 6 (b/t)^2), first principles (Rayleigh's quotient, exact
  // for this shape where the strip's inertia along itself is left out). On rollers there is no thrust. Slopes of 0.016:
  // 0.03 %.
  const double f0 = beam_frequency(pi * pi);
  CHECK(arch_frequency(0.0, EdgeSupport::rest) == doctest::Approx(f0).epsilon(1e-3));
  CHECK(arch_frequency(0.0, EdgeSupport::hinged) == doctest::Approx(f0).epsilon(1e-3));
  CHECK(arch_frequency(1.5e-3, EdgeSupport::rest) == doctest::Approx(f0).epsilon(1e-3));
  CHECK(arch_frequency(1.5e-3, EdgeSupport::hinged) ==
        doctest::Approx(f0 * std::sqrt(1.0 + 6.0 * 1.5 * 1.5)).epsilon(1e-3));
  // Clamped and flat: 4.7300^2 [Blevins1979].
  CHECK(arch_frequency(0.0, EdgeSupport::clamped) == doctest::Approx(beam_frequency(22.3733)).epsilon(1e-3));
}
