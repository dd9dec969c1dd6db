// SPDX-License-Identifier: MPL-2.0
// Models with numbers to turn, and what full solves say of them.
#pragma once

#include "changed_plate.h"

#include <plate/solvers/studies/sensitivity.h>

#include <cmath>
#include <functional>
#include <span>
#include <string>
#include <vector>

namespace plate::test
{

/// A number of a model that tests turn.
struct Knob
{
  std::string name;
  double value;
  double scale;
  std::function<void(double value, Model& model)> turn;
};

inline ChangedPlate plate_with(const Model& base, const std::vector<Knob>& knobs)
{
  return {base, [base, knobs](std::span<const double> values, Model& model)
          {
            model = base;
            for (std::size_t k = 0; k < knobs.size(); ++k)
              knobs[k].turn(values[k], model);
          }};
}

inline std::vector<SensitivityParameter> parameters_of(const std::vector<Knob>& knobs)
{
  std::vector<SensitivityParameter> out;
  for (const Knob& knob : knobs)
    out.push_back({.value = knob.value, .scale = knob.scale});
  return out;
}

inline std::vector<double> values_of(const std::vector<Knob>& knobs)
{
  std::vector<double> out;
  for (const Knob& knob : knobs)
    out.push_back(knob.value);
  return out;
}

/// Slopes from four full solves, error of fourth order in the step.
inline Eigen::VectorXd solved_slopes(ParametricModel& design, const std::vector<Knob>& knobs, std::size_t k,
                                     int num_modes)
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
inline double mismatch(const Eigen::VectorXd& a, const Eigen::VectorXd& b)
{
  return (a - b).cwiseAbs().maxCoeff() / b.cwiseAbs().maxCoeff();
}

/// With the footprint of a bar.
inline ShellMesh arched(double height)
{
  return arched_rectangle(2.6e-3, true, height);
}

/// A carved arched plate with a bar, a patch and a stuck-on mass; no symmetry, so that all modes are mixed.
inline Model whole_plate()
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

inline void set_arch(double height, Model& model)
{
  const ShellMesh mesh = arched(height);
  model.mesh.nodes = mesh.nodes;
  model.mesh.normals = mesh.normals;
}

inline Ply& first_ply(Model& model)
{
  return model.material.laminate.plies.front();
}

inline std::vector<Knob> knobs_of_whole_plate()
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

} // namespace plate::test
