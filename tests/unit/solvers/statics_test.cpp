// SPDX-License-Identifier: MPL-2.0
#include "sample_models.h"

#include <plate/core/error.h>
#include <plate/solvers/statics.h>

#include <doctest/doctest.h>

#include <cmath>

using namespace plate;

namespace
{

// A strip without Poisson contraction is a beam.
constexpr double E = 10e9;         // [Pa]
constexpr double G = 5e9;          // [Pa]
constexpr double length = 0.3;     // [m]
constexpr double width = 0.02;     // [m]
constexpr double thickness = 3e-3; // [m]
constexpr double EI = E * width * thickness * thickness * thickness / 12.0;
constexpr double shear = 5.0 / 6.0 * G * width * thickness;

Model strip()
{
  return test::plate_model(test::rectangle(length, width, 12, 1, thickness),
                           test::solid(test::isotropic(E, 0.0, 500.0), thickness));
}

Model arched_plate(EdgeSupport support)
{
  Model model = test::plate_model(test::grid_mesh({.x = {-0.1, -0.05, 0.0, 0.05, 0.1},
                                                   .y = {-0.05, 0.0, 0.05},
                                                   .surface = test::biparabolic(0.2, 0.1, 0.01),
                                                   .thickness = 3e-3}),
                                  test::solid(test::reference_spruce(), 3e-3, 20, Grain::carved));
  if (support != EdgeSupport::free)
    test::support_all_sides(model, support);
  return model;
}

double height_at(const Model& model, const NodalUnknowns& u, const Eigen::Vector2d& at)
{
  NodalUnknowns unit = no_load(model.mesh);
  add_load(model.mesh, PointForce{.at = at, .force = {0.0, 0.0, 1.0}}, unit);
  return unit.cwiseProduct(u).sum();
}

} // namespace

TEST_CASE("the end of a clamped strip sinks as that of a beam")
{
  Model model = strip();
  model.supports = {{"x-", EdgeSupport::clamped}};
  const System system = assemble(model);
  NodalUnknowns loads = no_load(model.mesh);
  const double end = 0.5 * length;
  add_load(model.mesh, LineForce{.from = {end, -0.5 * width}, .to = {end, 0.5 * width}, .force = {0.0, 0.0, -2.0}},
           loads);
  const StaticResult result = solve_statics(system, on_unknowns(system.dofs, loads));
  // P L^3 / (3 EI) + P L / (5/6 GA): [Timoshenko1970] and any text.
  const double expected = -2.0 * (std::pow(length, 3) / (3.0 * EI) + length / shear);
  CHECK(height_at(model, at_nodes(system.dofs, result.x), {end, 0.0}) / expected == doctest::Approx(1.0).epsilon(1e-5));
  CHECK(result.residual <= 1e-9);
  CHECK(result.work / (2.0 * result.energy) == doctest::Approx(1.0).epsilon(1e-9));
}

TEST_CASE("reactions of hinged and clamped arches balance forces on points, areas, lines and the surface")
{
  for (const EdgeSupport support : {EdgeSupport::hinged, EdgeSupport::clamped})
  {
    const Model model = arched_plate(support);
    const System system = assemble(model);
    NodalUnknowns loads = no_load(model.mesh);
    add_load(model.mesh, PointForce{.at = {0.03, 0.01}, .force = {1.0, -2.0, 3.0}}, loads);
    add_load(
        model.mesh,
        AreaForce{.region = EllipseRegion{.centre = {-0.04, 0.02}, .axes = {0.02, 0.01}}, .force = {0.0, 0.0, -5.0}},
        loads);
    add_load(model.mesh, LineForce{.from = {-0.1, 0.0}, .to = {0.1, 0.03}, .force = {0.0, 4.0, 0.0}}, loads);
    add_surface_load(
        model, [](const Eigen::Vector3d&) { return Eigen::Vector3d(0.0, 0.0, 100.0); }, loads);
    const StaticResult result = solve_statics(system, on_unknowns(system.dofs, loads));
    CHECK(result.residual <= 1e-9);
    CHECK(result.work / (2.0 * result.energy) == doctest::Approx(1.0).epsilon(1e-9));
    const Balance balance = support_balance(model, system.dofs, at_nodes(system.dofs, result.x), loads);
    CHECK(balance.load(0) == doctest::Approx(1.0));
    CHECK(balance.load(1) == doctest::Approx(2.0));
    CHECK(balance.load(2) > 3.0 - 5.0 + 100.0 * 0.02); // the arch is larger than its planform of 0.02 m2
    CHECK((balance.load + balance.reaction).norm() <= 1e-9 * balance.load.norm());
    CHECK(balance.error <= 1e-9);
  }
}

TEST_CASE("an area force has its size, its centre and no part in a hole or beside the plate")
{
  const Model model = arched_plate(EdgeSupport::free);
  NodalUnknowns loads = no_load(model.mesh);
  add_load(model.mesh,
           AreaForce{.region = EllipseRegion{.centre = {0.02, -0.01}, .axes = {0.03, 0.02}}, .force = {0.0, 0.0, 2.0}},
           loads);
  const Eigen::Matrix<double, 6, 1> whole = resultant(model, loads);
  CHECK(whole(2) == doctest::Approx(2.0));
  CHECK(whole(3) == doctest::Approx(-0.01 * 2.0)); // moment about x: y F
  CHECK(whole(4) == doctest::Approx(-0.02 * 2.0)); // about y: -x F
  loads = no_load(model.mesh);
  add_load(model.mesh,
           AreaForce{.region = EllipseRegion{.centre = {0.1, 0.0}, .axes = {0.02, 0.02}}, .force = {0.0, 0.0, 2.0}},
           loads);
  CHECK(resultant(model, loads)(2) == doctest::Approx(2.0)); // all of it on the half that is there
  CHECK_THROWS_AS(add_load(model.mesh,
                           AreaForce{.region = EllipseRegion{.centre = {0.3, 0.0}, .axes = {0.02, 0.02}}, .force = {}},
                           loads),
                  InvalidInput);
  CHECK_THROWS_AS(add_load(model.mesh, PointForce{.at = {0.3, 0.0}, .force = {}}, loads), InvalidInput);
}

TEST_CASE("a bed of springs takes its share of a force beside the beam it stands under")
{
  Model model = strip();
  model.supports = {{"x-", EdgeSupport::rest}, {"x+", EdgeSupport::rest}};
  System system = assemble(model);
  CHECK(system.rigid_motions.cols() == 3);
  // Across the whole width and short along it: a spring in the middle of a beam.
  const SupportBed bed = {.region = PolygonRegion{{{-0.002, -0.01}, {0.002, -0.01}, {0.002, 0.01}, {-0.002, 0.01}}},
                          .stiffness = 4e3};
  add_support(model.mesh, bed, system);
  CHECK(system.rigid_motions.cols() == 3);
  NodalUnknowns loads = no_load(model.mesh);
  add_load(model.mesh, AreaForce{.region = bed.region, .force = {0.0, 0.0, -1.0}}, loads);
  const StaticResult result = solve_statics(system, on_unknowns(system.dofs, loads));
  const NodalUnknowns u = at_nodes(system.dofs, result.x);
  // Stiffness of the beam at its middle, 48 EI / L^3 with shear, beside that of the spring.
  const double beam = 1.0 / (std::pow(length, 3) / (48.0 * EI) + length / (4.0 * shear));
  const double sink = -1.0 / (beam + bed.stiffness);
  CHECK(height_at(model, u, {0.0, 0.0}) / sink == doctest::Approx(1.0).epsilon(1e-3)); // the bed is 4 mm long
  const Eigen::Matrix<double, 6, 1> push = resultant(model, support_forces(model.mesh, bed, u));
  CHECK(push(2) / (-bed.stiffness * sink) == doctest::Approx(1.0).epsilon(1e-3));
  const Balance balance = support_balance(model, system.dofs, u, loads, {bed});
  CHECK(balance.error <= 1e-9);
}

TEST_CASE("a free strip struck in its middle bends as a beam under its own inertia")
{
  const Model model = strip();
  const System system = assemble(model);
  NodalUnknowns loads = no_load(model.mesh);
  add_load(model.mesh, LineForce{.from = {0.0, -0.5 * width}, .to = {0.0, 0.5 * width}, .force = {0.0, 0.0, 3.0}},
           loads);
  const Eigen::VectorXd struck = on_unknowns(system.dofs, loads);
  const StaticSolver solver(system);
  CHECK_THROWS_AS(static_cast<void>(solver.solve(struck)), InvalidInput);
  const StaticResult result = solver.solve(balanced_by_inertia(system, struck));
  CHECK(result.residual <= 1e-9);
  const NodalUnknowns u = at_nodes(system.dofs, result.x);
  // Each half is a cantilever under the even load P / L: (P/L) (L/2)^4 / (8 EI) + (P/L) (L/2)^2 / (2 GA 5/6).
  const double load = 3.0 / length;
  const double half = 0.5 * length;
  const double expected = load * std::pow(half, 4) / (8.0 * EI) + load * half * half / (2.0 * shear);
  CHECK((height_at(model, u, {0.0, 0.0}) - height_at(model, u, {half, 0.0})) / expected ==
        doctest::Approx(1.0).epsilon(1e-3)); // the force is a line, and rotary inertia takes no part in the formula
}

TEST_CASE("no load gives no deflection, a load of another model is refused")
{
  Model model = strip();
  model.supports = {{"x-", EdgeSupport::clamped}};
  const System system = assemble(model);
  const StaticSolver solver(system);
  CHECK(solver.solve(Eigen::VectorXd::Zero(system.dofs.num_equations)).x.isZero(0.0));
  CHECK_THROWS_AS(static_cast<void>(solver.solve(Eigen::VectorXd::Zero(3))), InvalidInput);
}
