// SPDX-License-Identifier: MPL-2.0
#include "sample_models.h"

#include <plate/core/error.h>
#include <plate/solvers/buckling.h>
#include <plate/solvers/statics.h>

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace plate;

namespace
{

// A strip without Poisson contraction is a beam.
constexpr double E = 10e9;         // [Pa]
constexpr double length = 0.3;     // [m]
constexpr double width = 0.02;     // [m]
constexpr double thickness = 2e-3; // [m]
constexpr double EI = E * width * thickness * thickness * thickness / 12.0;
constexpr double shear = 5.0 / 6.0 * E / 2.0 * width * thickness;

/// A strip pressed by 1 N on its end x+.
struct PressedStrip
{
  Model model;
  System system;
  SparseMatrix KG;
};

PressedStrip pressed_strip(const std::vector<SupportedEdge>& supports, double force)
{
  Model model = test::plate_model(test::rectangle(length, width, 10, 1, thickness),
                                  test::solid(test::isotropic(E, 0.0, 500.0), thickness));
  model.supports = supports;
  const System system = assemble(model);
  NodalUnknowns loads = no_load(model.mesh);
  const double end = 0.5 * length;
  add_load(model.mesh, LineForce{.from = {end, -0.5 * width}, .to = {end, 0.5 * width}, .force = {-force, 0.0, 0.0}},
           loads);
  const StaticResult result = solve_statics(system, on_unknowns(system.dofs, loads));
  return {model, system, geometric_stiffness(model, system.dofs, at_nodes(system.dofs, result.x))};
}

/// Euler's force, softened by shear: 1/P = 1/P_E + 1/(5/6 GA), [Timoshenko1961] sec. 2.17.
double euler(double effective_length)
{
  const double P = std::pow(std::numbers::pi / effective_length, 2) * EI;
  return P / (1.0 + P / shear);
}

} // namespace

TEST_CASE("strips buckle at Euler's forces")
{
  const BucklingResult cantilever = [&]
  {
    const PressedStrip strip = pressed_strip({{"x-", EdgeSupport::clamped}}, 1.0);
    return solve_buckling(strip.system, strip.KG, {.num_modes = 2});
  }();
  REQUIRE(cantilever.status == Status::converged);
  REQUIRE(cantilever.factors.size() == 2);
  CHECK(cantilever.factors(0) / euler(2.0 * length) == doctest::Approx(1.0).epsilon(1e-3));
  CHECK(cantilever.factors(1) / euler(2.0 * length / 3.0) == doctest::Approx(1.0).epsilon(1e-3));
  CHECK(cantilever.residuals.maxCoeff() < 1e-5);

  const PressedStrip pinned = pressed_strip({{"x-", EdgeSupport::hinged}, {"x+", EdgeSupport::rest}}, 1.0);
  const BucklingResult buckling = solve_buckling(pinned.system, pinned.KG);
  REQUIRE(buckling.factors.size() == 3);
  for (Eigen::Index i = 0; i < 3; ++i)
    CHECK(buckling.factors(i) / euler(length / static_cast<double>(i + 1)) == doctest::Approx(1.0).epsilon(2e-3));
}

TEST_CASE("half the buckling force lowers the first frequency by the root of a half, tension raises it")
{
  const std::vector<SupportedEdge> pinned = {{"x-", EdgeSupport::hinged}, {"x+", EdgeSupport::rest}};
  const PressedStrip straight = pressed_strip(pinned, 1.0);
  const double f0 = solve_modes(straight.system, {.num_modes = 1}).frequencies_hz(0);
  const double half = 0.5 * euler(length);
  const PressedStrip pressed = pressed_strip(pinned, half);
  const PressedStrip pulled = pressed_strip(pinned, -half);
  // f^2 / f0^2 = 1 - P / P_E of a pinned beam: [Blevins1979], beams under axial force.
  const auto first = [](const PressedStrip& strip)
  { return solve_modes(prestressed(strip.system, strip.KG), {.num_modes = 1}).frequencies_hz(0); };
  CHECK(first(pressed) / f0 == doctest::Approx(std::sqrt(0.5)).epsilon(1e-3));
  CHECK(first(pulled) / f0 == doctest::Approx(std::sqrt(1.5)).epsilon(1e-3));
}

TEST_CASE("tension does not buckle, nor does a load square to a flat plate")
{
  Model model = test::plate_model(test::rectangle(length, width, 10, 1, thickness),
                                  test::solid(test::isotropic(E, 0.0, 500.0), thickness));
  model.supports = {{"x-", EdgeSupport::clamped}};
  const System system = assemble(model);
  NodalUnknowns loads = no_load(model.mesh);
  add_load(model.mesh, PointForce{.at = {0.5 * length, 0.0}, .force = {0.0, 0.0, 1.0}}, loads);
  const NodalUnknowns u = at_nodes(system.dofs, solve_statics(system, on_unknowns(system.dofs, loads)).x);
  const BucklingResult square = solve_buckling(system, geometric_stiffness(model, system.dofs, u));
  CHECK(square.factors.size() == 0);
  CHECK(square.status == Status::converged);
  const PressedStrip pulled = pressed_strip({{"x-", EdgeSupport::clamped}}, -1.0);
  CHECK(solve_buckling(pulled.system, pulled.KG).factors.size() == 0);
}

TEST_CASE("a strip that rests and can slide buckles as a pinned one")
{
  const auto factor = [](const std::vector<SupportedEdge>& supports)
  {
    PressedStrip strip = pressed_strip({{"x-", EdgeSupport::hinged}, {"x+", EdgeSupport::rest}}, 1.0);
    const NodalUnknowns u = [&]
    {
      NodalUnknowns pressed = no_load(strip.model.mesh); // even compression
      for (std::size_t node = 0; node < strip.model.mesh.nodes.size(); ++node)
        pressed(0, static_cast<Eigen::Index>(node)) = -strip.model.mesh.nodes[node].x() / (E * width * thickness);
      return pressed;
    }();
    strip.model.supports = supports;
    strip.system = assemble(strip.model);
    strip.KG = geometric_stiffness(strip.model, strip.system.dofs, u);
    return solve_buckling(strip.system, strip.KG, {.num_modes = 1}).factors(0);
  };
  CHECK(factor({{"x-", EdgeSupport::rest}, {"x+", EdgeSupport::rest}}) / euler(length) ==
        doctest::Approx(1.0).epsilon(1e-3));
}

TEST_CASE("buckling refuses a matrix of another model")
{
  Model model = test::plate_model(test::rectangle(length, width, 4, 1, thickness),
                                  test::solid(test::isotropic(E, 0.0, 500.0), thickness));
  const System system = assemble(model);
  model.supports = {{"x-", EdgeSupport::clamped}};
  CHECK_THROWS_AS(static_cast<void>(solve_buckling(assemble(model), system.K)), InvalidInput);
}
