// SPDX-License-Identifier: MPL-2.0
#include "knobs.h"
#include "relative.h"

#include <plate/core/error.h>

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

using namespace plate;
using namespace plate::test;

TEST_CASE("repeated modes take the slopes of the branches that leave them")
{
  // Two equal plates held at their far ends: a half turn brings one onto the other, so each frequency is there twice.
  // One grows thicker, the other thinner by half as much. The slopes are those of a single one.
  const Material wood = test::isotropic(10e9, 0.3, 500.0);
  test::GridPlate grid = {
      .x = {-0.15, -0.1, -0.05, 0.05, 0.1, 0.15}, .y = {-0.03, 0.0, 0.03}, .surface = test::flat(), .thickness = 2e-3};
  grid.keep = [](double x, double) { return std::abs(x) > 0.05; };
  Model both = test::plate_model(test::grid_mesh(grid), test::solid(wood, 2e-3));
  both.supports = {{"x-", EdgeSupport::clamped}, {"x+", EdgeSupport::clamped}};
  const std::vector<Knob> knobs = {{"thickness", 0.0, 1.0,
                                    [](double v, Model& m)
                                    {
                                      for (std::size_t i = 0; i < m.mesh.nodes.size(); ++i)
                                        m.mesh.thickness[i] *= 1.0 + (m.mesh.nodes[i].x() < 0.0 ? v : -0.5 * v);
                                    }}};
  ChangedPlate design = plate_with(both, knobs);
  const SensitivityResult result = sensitivities(design, parameters_of(knobs), {.num_modes = 5});

  grid.x = {-0.15, -0.1, -0.05};
  Model single = test::plate_model(test::grid_mesh(grid), test::solid(wood, 2e-3));
  single.supports = {{"x-", EdgeSupport::clamped}};
  ChangedPlate alone = plate_with(single, knobs);
  const Eigen::VectorXd slopes = solved_slopes(alone, knobs, 0, 3);

  for (Eigen::Index mode = 0; mode < 5; ++mode) // of the last pair only the first mode is asked for
  {
    const double factor = mode % 2 == 0 ? -0.5 : 1.0;
    CHECK(result.parameters[0].slopes_hz(mode) == test::relative(factor * slopes(mode / 2), 1e-5));
  }
  REQUIRE(result.close.size() == 2);
  for (std::size_t k = 0; k < 2; ++k)
  {
    CHECK(result.close[k].repeated);
    CHECK(result.close[k].first == static_cast<int>(2 * k));
    CHECK(result.close[k].count == 2);
  }
}

TEST_CASE("modes near one another are said to be near, not repeated")
{
  // Stretched by 2 parts in a thousand the pair of the square plate parts by less than a percent.
  const Material wood = test::isotropic(10e9, 0.3, 500.0);
  const std::vector<Knob> knobs = {
      {"density", 500.0, 500.0, [](double v, Model& m) { first_ply(m).material.density = v; }}};
  ChangedPlate design =
      plate_with(test::plate_model(test::rectangle(0.2004, 0.2, 4, 4, 2e-3), test::solid(wood, 2e-3)), knobs);
  const SensitivityResult result = sensitivities(design, parameters_of(knobs), {.num_modes = 6});
  REQUIRE_FALSE(result.close.empty());
  CHECK_FALSE(result.close.front().repeated);
  CHECK(mismatch(500.0 * result.parameters[0].slopes_hz, -0.5 * result.modes.frequencies_hz) < 1e-6);
}

TEST_CASE("at the end of its range a parameter is changed to one side")
{
  const std::vector<Knob> knobs = {knobs_of_whole_plate()[4]};
  ChangedPlate free = plate_with(whole_plate(), knobs);
  const Eigen::VectorXd expected = solved_slopes(free, knobs, 0, 4);
  for (const double sign : {1.0, -1.0})
  {
    std::vector<Knob> limited = knobs;
    limited[0].turn = [turn = knobs[0].turn, sign](double v, Model& m)
    {
      if (sign * v < sign * 4.0)
        throw InvalidInput("beyond the end");
      turn(v, m);
    };
    ChangedPlate design = plate_with(whole_plate(), limited);
    const SensitivityResult result = sensitivities(design, parameters_of(limited), {.num_modes = 4});
    CHECK(mismatch(result.parameters[0].slopes_hz, expected) < 1e-5);
  }
}

TEST_CASE("the air's mass counts, also where the plate grows")
{
  Model base = test::plate_model(test::arched_rectangle(2.6e-3), test::solid(test::reference_spruce(), 2.6e-3));
  base.air_density = 1.2;
  const std::vector<Knob> knobs = {
      {"density of the air", 1.2, 1.2, [](double v, Model& m) { m.air_density = v; }},
      {"density", 400.0, 400.0, [](double v, Model& m) { first_ply(m).material.density = v; }},
      {"size", 1.0, 1.0,
       [](double v, Model& m)
       {
         for (Eigen::Vector3d& node : m.mesh.nodes)
           node *= v;
         for (double& t : m.mesh.thickness)
           t *= v;
       }}};
  ChangedPlate design = plate_with(base, knobs);
  const SensitivityResult result = sensitivities(design, parameters_of(knobs), {.num_modes = 5});
  const Eigen::VectorXd& f = result.modes.frequencies_hz;
  // All mass together lowers by a half; a body enlarged with the air around it sounds lower in proportion. The shapes
  // in air are mixed of few modes: frequencies err by the square of what they lack, slopes that move the mesh by
  // itself.
  CHECK(mismatch(1.2 * result.parameters[0].slopes_hz + 400.0 * result.parameters[1].slopes_hz, -0.5 * f) < 1e-6);
  CHECK(mismatch(result.parameters[2].slopes_hz, -f) < 1e-4);
  CHECK(result.parameters[0].acts);
  CHECK(result.parameters[0].mass_slope == 0.0);
  for (std::size_t k = 0; k < 2; ++k)
  {
    CAPTURE(knobs[k].name);
    CHECK(mismatch(result.parameters[k].slopes_hz, solved_slopes(design, knobs, k, 5)) < 1e-3);
  }
}

TEST_CASE("a parameter without effect is said to have none, and wrong ones are refused")
{
  const Model base = whole_plate();
  const std::vector<Knob> idle = {{"loss", 0.01, 0.01, [](double v, Model& m) { first_ply(m).material.loss.E1 = v; }}};
  ChangedPlate design = plate_with(base, idle);
  const SensitivityResult result = sensitivities(design, parameters_of(idle), {.num_modes = 2});
  CHECK_FALSE(result.parameters[0].acts);
  CHECK(result.parameters[0].slopes_hz.isZero(0.0));

  CHECK_THROWS_AS(static_cast<void>(sensitivities(design, std::vector<SensitivityParameter>{{0.01, 0.0}})),
                  InvalidInput);
  const std::vector<Knob> other = {{"mesh", 1.0, 1.0,
                                    [](double v, Model& m)
                                    {
                                      if (v > 1.0)
                                        m.mesh.triangles.pop_back();
                                    }}};
  ChangedPlate remade = plate_with(
      test::plate_model(test::rectangle(0.3, 0.2, 3, 2, 2e-3), test::solid(test::reference_spruce(), 2e-3)), other);
  CHECK_THROWS_AS(static_cast<void>(sensitivities(remade, parameters_of(other), {.num_modes = 2})), InvalidInput);
  const std::vector<Knob> nowhere = {{"point", 1.0, 1.0,
                                      [](double v, Model&)
                                      {
                                        if (v != 1.0)
                                          throw InvalidInput("only here");
                                      }}};
  ChangedPlate alone = plate_with(base, nowhere);
  CHECK_THROWS_AS(static_cast<void>(sensitivities(alone, parameters_of(nowhere), {.num_modes = 2})), InvalidInput);
}

TEST_CASE("the study can be stopped and gives what it has")
{
  const std::vector<Knob> knobs = knobs_of_whole_plate();
  ChangedPlate design = plate_with(whole_plate(), knobs);
  const SensitivityResult result = sensitivities(
      design, parameters_of(knobs), {.num_modes = 2, .progress = [](std::size_t k, std::size_t) { return k < 2; }});
  CHECK_FALSE(result.complete);
  CHECK(result.parameters.size() == 2);
}
