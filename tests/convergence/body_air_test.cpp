// SPDX-License-Identifier: MPL-2.0
// A0 of the demo body against mesh, cavity modes and motions of the structure; its table is in examples/viola/body.
#include "body_compliance.h"
#include "relative.h"

#include <plate/design/body_document.h>
#include <plate/design/build_body.h>
#include <plate/solvers/body_modes.h>

#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <vector>

using namespace plate;

namespace
{

/// The demo body of wood, assembled.
struct Demo
{
  BodyModel model;
  BodySystem system;
  BodyAir air;
};

Demo demo_body(const std::string& mesh_size)
{
  BodyDocument document = BodyDocument::from_file(std::string(EXAMPLES_DIR) + "/viola/body/wooden_body.toml");
  document.set("mesh.size", mesh_size);
  BodyModel model = build_body(document.design());
  BodySystem system = assemble(model.body);
  BodyAir air = {.cavity = model.cavity,
                 .holes = model.holes,
                 .sides = std::vector<WallSide>(model.body.parts.size(), WallSide::ribs),
                 .air = air_in({}),
                 .solids = model.solids};
  air.sides[BodyModel::top] = WallSide::top;
  air.sides[BodyModel::back] = WallSide::back;
  return {std::move(model), std::move(system), std::move(air)};
}

BodyModes solve(const Demo& demo, const BodyOptions& options)
{
  return solve_body_modes(demo.model.body, demo.system, demo.air,
                          Eigen::MatrixXd(0, demo.system.system.dofs.num_equations), options);
}

constexpr BodyOptions quick = {.structure_modes = 40, .cavity_modes = 12};

} // namespace

TEST_CASE("A0 stays as the mesh is made finer")
{
  // From the default on; coarser triangles lie across the edges of the end blocks, and A0 is up to 1 % high.
  double coarse = 0.0;
  for (const std::string& size : std::vector<std::string>{"22.5", "18", "15"})
  {
    const BodyModes modes = solve(demo_body(size), quick);
    const double a0 = modes.coupled.frequencies_hz(0);
    MESSAGE("mesh.size ", size, " mm: A0 ", a0, " Hz, rigid walls ", modes.rigid_walls_hz(0), " Hz");
    CHECK(a0 < 0.95 * modes.rigid_walls_hz(0)); // elastic walls lower it by a semitone on a violin, [Nia2015]
    if (coarse > 0.0)
      CHECK(a0 == test::relative(coarse, 3e-3)); // the outlines of the holes are meshed anew each time
    coarse = a0;
  }
}

TEST_CASE("A0 settles with the number of cavity modes and motions")
{
  const Demo demo = demo_body("30");
  const double best = solve(demo, {.structure_modes = 120, .cavity_modes = 48}).coupled.frequencies_hz(0);
  // Cavity modes left out act as incompressible air, motions left out through the static shape under pressure.
  for (const int count : {6, 12, 24})
  {
    const double a0 = solve(demo, {.structure_modes = 40, .cavity_modes = count}).coupled.frequencies_hz(0);
    MESSAGE(count, " cavity modes, 40 motions: A0 ", a0, " Hz of ", best);
    CHECK(a0 == test::relative(best, 1e-3));
  }
}

TEST_CASE("A0 is that of the holes on the spring of the air with that of the walls, but for the mass of the walls")
{
  // Air of volume V and walls of compliance C in series: w^2 = w_rigid^2 / (1 + rho c^2 C / V), by hand. Walls follow
  // the pressure more than slowly below their resonances, and the air inside moves with them: A0 is a little lower.
  const Demo demo = demo_body("40");
  const BodyModes modes = solve(demo, quick);
  const double compliance = test::under_pressure(demo.model.body, demo.system).work; // [m3/Pa]
  const Air& air = demo.air.air;
  const double spring = air.density * air.sound_speed * air.sound_speed;
  const double expected = modes.rigid_walls_hz(0) / std::sqrt(1.0 + spring * compliance / modes.volume);
  MESSAGE("expected ", expected, " Hz, A0 ", modes.coupled.frequencies_hz(0), " Hz");
  CHECK(modes.coupled.frequencies_hz(0) < expected);
  CHECK(modes.coupled.frequencies_hz(0) > 0.9 * expected);
}
