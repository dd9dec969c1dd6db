// SPDX-License-Identifier: MPL-2.0
// Bodies under forces beside closed forms; what strings and hands do to one is in body_load_test.cpp.
#include "body_box.h"
#include "relative.h"

#include <plate/assembly/body_loads.h>
#include <plate/core/error.h>
#include <plate/solvers/buckling.h>
#include <plate/solvers/statics.h>

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace plate;

namespace
{

constexpr double pi = std::numbers::pi;
constexpr double E = 10e9; // [Pa]

/// Beams: no contraction.
Laminate beam_wall(double thickness)
{
  return test::solid(test::isotropic(E, 0.0, 500.0), thickness);
}

/// Mean deflection over the middle patch c x c of a simply supported thin plate a x b under 1 N spread over it:
/// Navier's double series, [Timoshenko1959] art. 29, its terms averaged over the patch [m/N].
double navier_compliance(double a, double b, double c, double D)
{
  constexpr int last = 199;
  double sum = 0.0;
  for (int m = 1; m <= last; m += 2)
    for (int n = 1; n <= last; n += 2)
    {
      const double over_x = std::sin(0.5 * m * pi * c / a) / (0.5 * m * pi * c / a);
      const double over_y = std::sin(0.5 * n * pi * c / b) / (0.5 * n * pi * c / b);
      const double waves = m * m / (a * a) + n * n / (b * b);
      sum += over_x * over_x * over_y * over_y / (waves * waves);
    }
  return 4.0 / (a * b * D * std::pow(pi, 4)) * sum;
}

/// Thin plate theory: rigid in shear through the plate.
Material thin_plate(double nu)
{
  Material material = test::isotropic(E, nu, 500.0);
  material.elastic.G13 *= 100.0;
  material.elastic.G23 *= 100.0;
  return material;
}

PlanformRegion square(double side)
{
  const double h = 0.5 * side;
  return PolygonRegion{.points = {{-h, -h}, {h, -h}, {h, h}, {-h, h}}};
}

/// A strip in two halves glued end to end, the second upside down, held by nothing, pressed at both ends.
double factor_of_glued_strip(double length, double width, double thickness, double force)
{
  const Model half = test::flat_wall(0.5 * length, width, beam_wall(thickness), 6, 1);
  const Body body =
      test::glued({{.name = "a", .model = half, .placement = test::placed_at({-0.25 * length, 0, 0})},
                   {.name = "b", .model = half, .placement = test::placed_at({0.25 * length, 0, 0}, pi)}});
  const BodySystem system = assemble(body);
  PartUnknowns forces = no_load(body);
  const double end = 0.25 * length;
  for (std::size_t p = 0; p < 2; ++p)
  {
    const double side = p == 0 ? -1.0 : 1.0;
    add_load(
        body.parts[p].model.mesh,
        LineForce{.from = {side * end, -0.5 * width}, .to = {side * end, 0.5 * width}, .force = {-side * force, 0, 0}},
        forces[p]);
  }
  const StaticSolver solver(system.system);
  const StaticResult state = solver.solve(on_unknowns(system, forces));
  const SparseMatrix KG = geometric_stiffness(body, system, at_nodes(system, state.x));
  const BucklingResult buckling = solve_buckling(solver, KG, {.num_modes = 1});
  REQUIRE(buckling.factors.size() == 1);
  CHECK(buckling.residuals(0) < 1e-4);
  return buckling.factors(0);
}

} // namespace

TEST_CASE("a post between two plates shares a load as their Navier stiffnesses and its own say")
{
  constexpr double a = 0.3;
  constexpr double b = 0.2;
  constexpr double c = 0.02;
  constexpr double gap = 0.05;
  constexpr double P = 50.0;
  constexpr double nu = 0.3;
  const std::array<double, 2> thickness = {2e-3, 3e-3};
  for (const double softer : {1.0, 1e-3}) // a stiff post, and one as soft as the plates
  {
    CAPTURE(softer);
    std::vector<BodyPart> parts;
    for (std::size_t p = 0; p < 2; ++p)
    {
      parts.push_back({.name = p == 0 ? "upper" : "lower",
                       .model = test::flat_wall(a, b, test::solid(thin_plate(nu), thickness[p]), 45, 30),
                       .placement = test::placed_at({0, 0, p == 0 ? 0.0 : -gap})});
      test::support_all_sides(parts.back().model, EdgeSupport::hinged);
    }
    Body body = {.parts = std::move(parts), .joints = {}};
    body.struts = {test::post(0, square(c), 1, square(c))};
    body.struts.front().E *= softer;
    const BodySystem system = assemble(body);
    PartUnknowns forces = no_load(body);
    add_load(body.parts[0].model.mesh, AreaForce{.region = square(c), .force = {0, 0, -P}}, forces[0]);
    const StaticResult state = solve_statics(system.system, on_unknowns(system, forces));
    const auto compliance = [&](std::size_t p)
    { return navier_compliance(a, b, c, E * std::pow(thickness[p], 3) / (12.0 * (1.0 - nu * nu))); };
    const double post = gap / (body.struts.front().E * 0.25 * pi * 36e-6);
    const double expected = P * compliance(0) / (compliance(0) + compliance(1) + post);
    const Eigen::Vector3d carried = strut_forces(body, system, state.x).front();
    // Elements and what little shear is left: a tenth of a percent of each stiffness.
    CHECK(carried.z() == test::relative(expected, 2e-3));
    CHECK(carried.head<2>().norm() < 1e-3 * P); // the triangles of a cell are no mirror images
  }
}

TEST_CASE("a square tube pressed from two sides gives way as a frame of four beams, held by nothing")
{
  // Corner moment P a / 16 from equal slopes; beam between its corners 5 P a^3 / (384 EI), its shear P a / (4 k GA);
  // the uprights shorten by P a / (2 EA). Worked by hand.
  constexpr double a = 0.1;
  constexpr double width = 0.03;
  constexpr double t = 1.5e-3;
  constexpr double P = 10.0;
  const Laminate laminate = beam_wall(t);
  const Model wall = test::flat_wall(a, width, laminate, 4, 2);
  const Eigen::Vector3d y = Eigen::Vector3d::UnitY();
  const Body body =
      test::glued({{.name = "top", .model = wall, .placement = test::placed_at({0, 0, 0.5 * a})},
                   {.name = "back", .model = wall, .placement = test::placed_at({0, 0, -0.5 * a}, pi)},
                   {.name = "x+", .model = wall, .placement = test::placed_at({0.5 * a, 0, 0}, 0.5 * pi, y)},
                   {.name = "x-", .model = wall, .placement = test::placed_at({-0.5 * a, 0, 0}, -0.5 * pi, y)}});
  const BodySystem system = assemble(body);
  REQUIRE(system.system.rigid_motions.cols() == 6);
  PartUnknowns forces = no_load(body);
  for (std::size_t p = 0; p < 2; ++p) // both normals point outward
    add_load(body.parts[p].model.mesh,
             LineForce{.from = {0, -0.5 * width}, .to = {0, 0.5 * width}, .force = {0, 0, -P}}, forces[p]);
  const StaticResult state = solve_statics(system.system, on_unknowns(system, forces));
  const double EI = E * width * t * t * t / 12.0;
  const double kGA = 5.0 / 6.0 * 0.5 * E * width * t;
  const double closing =
      2.0 * (5.0 * P * a * a * a / (384.0 * EI) + P * a / (4.0 * kGA)) + 0.5 * P * a / (E * width * t);
  CHECK(state.work / P == test::relative(closing, 1e-4));
  CHECK(state.energy == test::relative(0.5 * state.work, 1e-9));
  CHECK(state.residual < 1e-9);
}

TEST_CASE("a strip of two glued halves that nothing holds buckles as between pins")
{
  // The load turns with the strip. Even shapes with free ends: w'' = 0 and EI w''' + P w' = 0 give cos(pi x / l),
  // Euler's force; shear softens it, [Timoshenko1961] sec. 2.17. Odd ones need 3.4 times that (worked by hand).
  constexpr double length = 0.3;
  constexpr double width = 0.02;
  constexpr double t = 2e-3;
  const double euler = pi * pi * E * width * t * t * t / 12.0 / (length * length);
  const double expected = euler / (1.0 + euler / (5.0 / 6.0 * 0.5 * E * width * t));
  CHECK(factor_of_glued_strip(length, width, t, 1.0) == test::relative(expected, 1e-3));
  CHECK(factor_of_glued_strip(length, width, t, 5.0) == test::relative(0.2 * expected, 1e-3));
}

TEST_CASE("a force through a rigid body does to its nodes what it is")
{
  const Body body = test::closed_box({.sides = {0.3, 0.2, 0.05}, .cells = {3, 2, 1}, .laminate = beam_wall(2e-3)});
  const RigidForce load = {.part = 3, .nodes = {0, 1, 2, 3, 7}, .at = {0.4, -0.02, 0.07}, .force = {3.0, -5.0, 7.0}};
  PartUnknowns forces = no_load(body);
  add_load(body, load, forces);
  const Eigen::Matrix<double, 6, 1> sum = resultant(body, forces);
  CHECK((sum.head<3>() - load.force).norm() < 1e-12 * load.force.norm());
  CHECK((sum.tail<3>() - load.at.cross(load.force)).norm() < 1e-12 * load.force.norm());
  // The same from the unknowns: work on the six rigid motions, whose last three turn about the origin.
  const BodySystem system = assemble(body);
  const Eigen::VectorXd work = system.system.rigid_motions.transpose() * on_unknowns(system, forces);
  CHECK((work - sum).norm() < 1e-12 * load.force.norm());
  RigidForce wrong = load;
  wrong.nodes = {0, 1};
  CHECK_THROWS_WITH_AS(add_load(body, wrong, forces), doctest::Contains("three nodes"), InvalidInput);
  wrong.nodes.clear();
  const std::vector<Eigen::Vector3d>& all = body.parts[3].model.mesh.nodes;
  for (std::size_t i = 0; i < all.size(); ++i)
    if (std::abs(all[i].x() - 0.025) < 1e-9)
      wrong.nodes.push_back(static_cast<int>(i));
  CHECK_THROWS_WITH_AS(add_load(body, wrong, forces), doctest::Contains("on one line"), InvalidInput);
  wrong.nodes = {0, 1, 9999};
  CHECK_THROWS_WITH_AS(add_load(body, wrong, forces), doctest::Contains("node 9999"), InvalidInput);
  wrong.part = 6;
  CHECK_THROWS_WITH_AS(add_load(body, wrong, forces), doctest::Contains("part 6"), InvalidInput);
}

TEST_CASE("a body turned and shifted with its forces stores the same energy and carries the same in its post")
{
  const auto state_of = [](const Eigen::Isometry3d& move)
  {
    Body body = test::closed_box({.sides = {0.3, 0.2, 0.05}, .cells = {6, 4, 1}, .laminate = beam_wall(2e-3)});
    for (BodyPart& part : body.parts)
      part.placement = move * part.placement;
    const EllipseRegion foot = {.centre = {0.03, 0.02}, .axes = {0.01, 0.01}};
    EllipseRegion opposite = foot;
    opposite.centre.y() *= -1.0;
    body.struts = {test::post(0, foot, 1, opposite)};
    const BodySystem system = assemble(body);
    PartUnknowns forces = no_load(body);
    std::vector<int> nodes(body.parts[2].model.mesh.nodes.size());
    for (std::size_t i = 0; i < nodes.size(); ++i)
      nodes[i] = static_cast<int>(i);
    const Eigen::Vector3d pull = move.linear() * Eigen::Vector3d(100.0, 5.0, 20.0);
    for (const std::size_t p : {2U, 3U})
      add_load(
          body,
          RigidForce{
              .part = p, .nodes = nodes, .at = move * Eigen::Vector3d(0.0, 0.01, 0.04), .force = p == 2 ? pull : -pull},
          forces);
    const StaticResult state = solve_statics(system.system, on_unknowns(system, forces));
    const Eigen::VectorXd x = relative_to(body, system, std::array<std::size_t, 4>{2, 3, 4, 5}, state.x);
    const NodalUnknowns top = at_nodes(system, x).front();
    return std::pair(Eigen::Vector3d(state.energy, strut_forces(body, system, state.x).front().norm(), 0.0), top);
  };
  const auto [here, top] = state_of(Eigen::Isometry3d::Identity());
  const auto [there, top_there] =
      state_of(test::placed_at({0.7, -0.4, 1.1}, 2.1, Eigen::Vector3d(1, 2, 3).normalized()));
  CHECK(there(0) == test::relative(here(0), 1e-9));
  CHECK(there(1) == test::relative(here(1), 1e-8));
  CHECK((top_there - top).topRows<3>().norm() < 1e-8 * top.topRows<3>().norm()); // in the axes of the part
  CHECK(here(1) > 0.1);
}

TEST_CASE("what moves rigidly rests against its own parts")
{
  const Body body = test::closed_box({.sides = {0.3, 0.2, 0.05}, .cells = {3, 2, 1}, .laminate = beam_wall(2e-3)});
  const BodySystem system = assemble(body);
  Eigen::Matrix<double, 6, 1> motion;
  motion << 1e-3, -2e-3, 3e-3, 0.01, 0.02, -0.03;
  const Eigen::VectorXd x = system.system.rigid_motions * motion;
  CHECK(relative_to(body, system, std::array<std::size_t, 1>{4}, x).norm() < 1e-12 * x.norm());
}
