// SPDX-License-Identifier: MPL-2.0
#include "changed_plate.h"
#include "relative.h"

#include <plate/core/error.h>
#include <plate/solvers/studies/sensitivity.h>

#include <doctest/doctest.h>

#include <cmath>
#include <functional>
#include <string>
#include <vector>

using namespace plate;

namespace
{

using test::ChangedPlate;

/// One number of a model, its value, and what its change by the parameter means.
struct Knob
{
  std::string name;
  double value;
  double scale;
  std::function<void(double value, Model& model)> turn;
};

ChangedPlate plate_with(const Model& base, const std::vector<Knob>& knobs)
{
  return {base, [base, knobs](std::span<const double> values, Model& model)
          {
            model = base;
            for (std::size_t k = 0; k < knobs.size(); ++k)
              knobs[k].turn(values[k], model);
          }};
}

std::vector<SensitivityParameter> parameters_of(const std::vector<Knob>& knobs)
{
  std::vector<SensitivityParameter> out;
  for (const Knob& knob : knobs)
    out.push_back({.value = knob.value, .scale = knob.scale});
  return out;
}

std::vector<double> values_of(const std::vector<Knob>& knobs)
{
  std::vector<double> out;
  for (const Knob& knob : knobs)
    out.push_back(knob.value);
  return out;
}

/// Slopes from four full solves, error of fourth order in the step.
Eigen::VectorXd solved_slopes(ParametricModel& design, const std::vector<Knob>& knobs, std::size_t k, int num_modes)
{
  constexpr double part = 1e-3; // of the scale: truncation is (1e-3)^4, the solver's 1e-11 gives 1e-8
  const double step = part * knobs[k].scale;
  const auto at = [&](double steps)
  {
    std::vector<double> point = values_of(knobs);
    point[k] += steps * step;
    const Model model = design.build(point);
    return solve_modes(model, assemble(model), {.num_modes = num_modes, .tolerance = 1e-12}).frequencies_hz;
  };
  return (8.0 * (at(1) - at(-1)) - (at(2) - at(-2))) / (12.0 * step);
}

/// Largest difference of two lists of slopes over the largest of them [-].
double mismatch(const Eigen::VectorXd& a, const Eigen::VectorXd& b)
{
  return (a - b).cwiseAbs().maxCoeff() / b.cwiseAbs().maxCoeff();
}

ShellMesh arched(double height)
{
  test::GridPlate grid = {.x = test::lines_with_strips(0.15, 6, 0.004),
                          .y = {-0.09, -0.086, -0.04, 0.01, 0.018, 0.05, 0.086, 0.09},
                          .surface = test::biparabolic(0.3, 0.18, height),
                          .thickness = 2.6e-3};
  grid.under_bar = [](double x, double y) { return std::abs(x) < 0.11 && y > 0.01 && y < 0.018; };
  return test::grid_mesh(grid);
}

/// A carved arched plate with a bar, a patch and a stuck-on mass; no symmetry, so that all modes are mixed.
Model whole_plate()
{
  Model model = test::plate_model(arched(0.012), test::solid(test::reference_spruce(), 2.6e-3, 4.0, Grain::carved));
  model.bars = {
      {.material = test::reference_spruce(), .width = 6e-3, .profile = {{-0.11, 0.0, 0.11}, {4e-3, 11e-3, 4e-3}}}};
  model.patches = {{.side = PlateSide::inside,
                    .region = EllipseRegion{.centre = {-0.05, -0.03}, .axes = {0.08, 0.05}},
                    .laminate = test::solid(test::reference_carbon(), 0.15e-3, 20.0)}};
  model.masses = {{.at = {0.06, 0.055}, .mass = 4e-3}};
  return model;
}

void set_arch(double height, Model& model)
{
  const ShellMesh mesh = arched(height);
  model.mesh.nodes = mesh.nodes;
  model.mesh.normals = mesh.normals;
}

Ply& first_ply(Model& model)
{
  return model.material.laminate.plies.front();
}

std::vector<Knob> knobs_of_whole_plate()
{
  return {
      {"E1", 11e9, 11e9, [](double v, Model& m) { first_ply(m).material.elastic.E1 = v; }},
      {"G23", 33e6, 33e6, [](double v, Model& m) { first_ply(m).material.elastic.G23 = v; }},
      {"nu12", 0.372, 0.372, [](double v, Model& m) { first_ply(m).material.elastic.nu12 = v; }},
      {"density", 400.0, 400.0, [](double v, Model& m) { first_ply(m).material.density = v; }},
      {"angle", 4.0, 57.3, [](double v, Model& m) { first_ply(m).angle = Angle::degrees(v); }},
      {"thickness", 2.6e-3, 2.6e-3, [](double v, Model& m) { m.mesh.thickness.assign(m.mesh.thickness.size(), v); }},
      {"arch", 0.012, 0.012, set_arch},
      {"bar height", 11e-3, 11e-3, [](double v, Model& m) { m.bars[0].profile.height[1] = v; }},
      {"bar width", 6e-3, 6e-3, [](double v, Model& m) { m.bars[0].width = v; }},
      {"bar E1", 11e9, 11e9, [](double v, Model& m) { m.bars[0].material.elastic.E1 = v; }},
      {"patch ply", 0.15e-3, 0.15e-3, [](double v, Model& m) { m.patches[0].laminate.plies[0].thickness = v; }},
      {"patch angle", 20.0, 57.3, [](double v, Model& m) { m.patches[0].laminate.plies[0].angle = Angle::degrees(v); }},
      {"grams", 4e-3, 4e-3, [](double v, Model& m) { m.masses[0].mass = v; }},
      {"place", 0.06, 0.05, [](double v, Model& m) { m.masses[0].at.x() = v; }},
  };
}

} // namespace

TEST_CASE("derivatives by parts of a whole plate are those of full solves")
{
  const Model base = whole_plate();
  const std::vector<Knob> knobs = knobs_of_whole_plate();
  ChangedPlate design = plate_with(base, knobs);
  const SensitivityResult result = sensitivities(design, parameters_of(knobs), {.num_modes = 6});
  REQUIRE(result.complete);
  REQUIRE(result.parameters.size() == knobs.size());
  for (std::size_t k = 0; k < knobs.size(); ++k)
  {
    CAPTURE(knobs[k].name);
    CHECK(result.parameters[k].acts);
    CHECK(mismatch(result.parameters[k].slopes_hz, solved_slopes(design, knobs, k, 6)) < 1e-5);
  }
}

TEST_CASE("derivatives of the mass are those of assembled plates")
{
  const Model base = whole_plate();
  const std::vector<Knob> knobs = knobs_of_whole_plate();
  ChangedPlate design = plate_with(base, knobs);
  const SensitivityResult result = sensitivities(design, parameters_of(knobs), {.num_modes = 1});
  for (std::size_t k = 0; k < knobs.size(); ++k)
  {
    CAPTURE(knobs[k].name);
    std::vector<double> up = values_of(knobs);
    std::vector<double> down = up;
    up[k] += 1e-3 * knobs[k].scale;
    down[k] -= 1e-3 * knobs[k].scale;
    const double slope =
        (assemble(design.build(up)).mass - assemble(design.build(down)).mass) / (2e-3 * knobs[k].scale);
    // Mass is a polynomial of second degree in all of these, so only rounding is left.
    CHECK(std::abs(result.parameters[k].mass_slope - slope) * knobs[k].scale < 1e-8 * result.system.mass);
  }
}

TEST_CASE("sum rules: all moduli together, density, size")
{
  // Of one material with fixed Poisson's ratios, K is of first degree in all moduli, M in the density; enlarged in all
  // directions, a body of the same material sounds lower in proportion (dimensional analysis).
  const Model base =
      test::plate_model(arched(0.012), test::solid(test::reference_spruce(), 2.6e-3, 10.0, Grain::carved));
  Model with_bar = base;
  with_bar.bars = {{.material = test::reference_spruce(), .width = 6e-3, .profile = {{-0.11, 0.11}, {9e-3, 5e-3}}}};
  using Modulus = double OrthotropicElastic::*;
  std::vector<Knob> knobs;
  const OrthotropicElastic spruce = test::reference_spruce().elastic;
  for (const Modulus modulus : {&OrthotropicElastic::E1, &OrthotropicElastic::E2, &OrthotropicElastic::E3,
                                &OrthotropicElastic::G12, &OrthotropicElastic::G13, &OrthotropicElastic::G23})
    knobs.push_back({"modulus", spruce.*modulus, spruce.*modulus,
                     [modulus](double v, Model& m)
                     {
                       first_ply(m).material.elastic.*modulus = v;
                       m.bars[0].material.elastic.*modulus = v;
                     }});
  knobs.push_back({"density", 400.0, 400.0,
                   [](double v, Model& m)
                   {
                     first_ply(m).material.density = v;
                     m.bars[0].material.density = v;
                   }});
  knobs.push_back({"size", 1.0, 1.0,
                   [](double v, Model& m)
                   {
                     for (Eigen::Vector3d& node : m.mesh.nodes)
                       node *= v;
                     for (double& t : m.mesh.thickness)
                       t *= v;
                     for (double& s : m.mesh.bars[0].station)
                       s *= v;
                     m.bars[0].width *= v;
                     for (double& s : m.bars[0].profile.station)
                       s *= v;
                     for (double& h : m.bars[0].profile.height)
                       h *= v;
                   }});
  ChangedPlate design = plate_with(with_bar, knobs);
  const SensitivityResult result = sensitivities(design, parameters_of(knobs), {.num_modes = 8});
  const Eigen::VectorXd& f = result.modes.frequencies_hz;
  Eigen::VectorXd by_moduli = Eigen::VectorXd::Zero(8);
  for (std::size_t k = 0; k < 6; ++k)
    by_moduli += knobs[k].value * result.parameters[k].slopes_hz;
  CHECK(mismatch(by_moduli, 0.5 * f) < 1e-6);
  CHECK(mismatch(400.0 * result.parameters[6].slopes_hz, -0.5 * f) < 1e-6);
  CHECK(mismatch(result.parameters[7].slopes_hz, -f) < 1e-6);
  CHECK(400.0 * result.parameters[6].mass_slope == test::relative(result.system.mass, 1e-8));
  CHECK(result.parameters[7].mass_slope == test::relative(3.0 * result.system.mass, 1e-6));
}

TEST_CASE("a thin flat plate sounds higher in proportion to its thickness")
{
  // Kirchhoff: f ~ h. Shear and rotary inertia take off a part that grows with (h/wavelength)^2: from full thickness to
  // a half it falls to a quarter.
  const auto shortfall = [](double thickness)
  {
    const Material wood = test::isotropic(10e9, 0.3, 500.0);
    const std::vector<Knob> knobs = {{"thickness", thickness, thickness,
                                      [](double v, Model& m) { m.mesh.thickness.assign(m.mesh.thickness.size(), v); }}};
    ChangedPlate design =
        plate_with(test::plate_model(test::rectangle(0.3, 0.2, 6, 4, thickness), test::solid(wood, thickness)), knobs);
    const SensitivityResult result = sensitivities(design, parameters_of(knobs), {.num_modes = 4});
    const Eigen::VectorXd part = thickness * result.parameters[0].slopes_hz.cwiseQuotient(result.modes.frequencies_hz);
    return Eigen::VectorXd(1.0 - part.array());
  };
  const Eigen::VectorXd thick = shortfall(1e-3);
  const Eigen::VectorXd thin = shortfall(0.5e-3);
  for (Eigen::Index i = 0; i < 4; ++i)
  {
    CHECK(thick(i) > 0.0);
    CHECK(thick(i) < 5e-3);
    CHECK(thin(i) < thick(i));
  }
}

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

  CHECK_THROWS_AS(sensitivities(design, std::vector<SensitivityParameter>{{0.01, 0.0}}), InvalidInput);
  const std::vector<Knob> other = {{"mesh", 1.0, 1.0,
                                    [](double v, Model& m)
                                    {
                                      if (v > 1.0)
                                        m.mesh.triangles.pop_back();
                                    }}};
  ChangedPlate remade = plate_with(
      test::plate_model(test::rectangle(0.3, 0.2, 3, 2, 2e-3), test::solid(test::reference_spruce(), 2e-3)), other);
  CHECK_THROWS_AS(sensitivities(remade, parameters_of(other), {.num_modes = 2}), InvalidInput);
  const std::vector<Knob> nowhere = {{"point", 1.0, 1.0,
                                      [](double v, Model&)
                                      {
                                        if (v != 1.0)
                                          throw InvalidInput("only here");
                                      }}};
  ChangedPlate alone = plate_with(base, nowhere);
  CHECK_THROWS_AS(sensitivities(alone, parameters_of(nowhere), {.num_modes = 2}), InvalidInput);
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
