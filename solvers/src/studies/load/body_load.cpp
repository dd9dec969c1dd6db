// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/studies/body_load.h>

#include "body_hands.h"
#include "free_body.h"

#include <plate/core/error.h>

#include <algorithm>
#include <limits>
#include <utility>

namespace plate
{

namespace
{

std::array<PlanformRegion, 2> feet_of(const BodyStrings& strings)
{
  return {EllipseRegion{.centre = strings.feet[0], .axes = strings.foot},
          EllipseRegion{.centre = strings.feet[1], .axes = strings.foot}};
}

/// All three forces run through the crest of the bridge: they balance whatever the path.
PartUnknowns string_forces(const FreeBody& body, std::size_t top, const BodyStrings& strings, const StringPath& path)
{
  PartUnknowns forces = no_load(body.body());
  const Eigen::Vector3d on_bridge = strings.tension * (path.to_neck + path.to_lower);
  for (const PlanformRegion& foot : feet_of(strings))
    body.add(top, foot, 0.5 * on_bridge, forces);
  const auto pull = [&](const GluedNodes& at, const Eigen::Vector3d& away)
  {
    add_load(body.body(),
             RigidForce{.part = at.part, .nodes = at.nodes, .at = path.crest, .force = -strings.tension * away},
             forces);
  };
  pull(strings.neck, path.to_neck);
  pull(strings.lower, path.to_lower);
  return forces;
}

void add_string_case(const FreeBody& body, const BodyLoadSetup& setup, BodyLoadStudy& study)
{
  const BodyStrings& strings = setup.strings;
  const auto [y_plus, y_minus] = feet_of(strings);
  const Eigen::Vector3d foot = 0.5 * (body.middle(setup.top, y_plus) + body.middle(setup.top, y_minus));
  study.path = string_path(foot, strings.height, strings.saddle, strings.bend);
  study.downforce = -strings.tension * (study.path.to_neck + study.path.to_lower).z();
  const PartUnknowns forces = string_forces(body, setup.top, strings, study.path);
  study.cases.push_back(body.solve({.name = "strings", .at = foot, .force = study.downforce}, forces));
  const BodyLoadCase& load = study.cases.back();
  for (std::size_t i = 0; i < strings.feet.size(); ++i)
    study.foot_deflections[i] = body.mean_rise(setup.top, feet_of(strings)[i], load);
  for (const Strut& strut : body.body().struts)
    study.post_deflections.push_back({body.mean_rise(strut.feet[0].part, strut.feet[0].region, load),
                                      body.mean_rise(strut.feet[1].part, strut.feet[1].region, load)});
}

/// Lowest modes of the body, with its air where there is any.
Eigen::VectorXd frequencies_of(const Body& body, const BodySystem& system, const BodyLoadSetup& setup)
{
  if (!setup.air)
    return solve_modes(system.system, {.num_modes = setup.num_modes}).frequencies_hz;
  // For a handful of modes: those of thrice as many are within 0.05 %.
  const BodyOptions options = {.structure_modes = 30 + 2 * setup.num_modes};
  const BodyModes modes =
      solve_body_modes(body, system, *setup.air, Eigen::MatrixXd(0, system.system.dofs.num_equations), options);
  return modes.coupled.frequencies_hz.head(setup.num_modes);
}

void add_stability(const FreeBody& body, const BodyLoadSetup& setup, BodyLoadStudy& study)
{
  PartUnknowns loaded;
  for (const PartLoad& part : study.cases.front().parts)
    loaded.push_back(part.displacements);
  const SparseMatrix KG = geometric_stiffness(body.body(), body.system(), loaded);
  study.buckling = solve_buckling(body.solver(), KG, {.num_modes = 2});
  if (study.buckling.status != Status::converged)
    throw NumericalFailure("the buckling factors of the body did not converge; a finer mesh may help");
  if (setup.num_modes == 0)
    return;
  study.frequencies_hz = frequencies_of(body.body(), body.system(), setup);
  const bool is_stable = study.buckling.factors.size() == 0 || study.buckling.factors(0) > 1.0;
  if (!is_stable)
    return;
  BodySystem stressed = body.system();
  stressed.system = prestressed(body.system().system, KG);
  study.loaded_frequencies_hz = frequencies_of(body.body(), stressed, setup);
}

bool has_strengths(const Model& model)
{
  return materials_without_strength(model).size() < materials_of(model).size();
}

/// Maps of all cases, part by part.
void add_strengths(const Body& body, const BodyLoadSetup& setup, std::vector<BodyLoadCase>& cases)
{
  bool judged = false;
  for (std::size_t p = 0; p < body.parts.size(); ++p)
  {
    const Model& model = body.parts[p].model;
    if (!has_strengths(model))
      continue;
    judged = true;
    std::vector<NodalUnknowns> states;
    for (const BodyLoadCase& load : cases)
      states.push_back(load.parts[p].displacements);
    const double cure_change = setup.cure_changes.empty() ? 0.0 : setup.cure_changes.at(p);
    std::vector<StrengthMap> maps = strength_maps(model, states, {.cure_change = cure_change});
    for (std::size_t i = 0; i < cases.size(); ++i)
    {
      BodyLoadCase& load = cases[i];
      load.parts[p].strength = std::move(maps[i]);
      if (load.parts[p].strength->margin < load.margin())
        load.worst = p;
    }
  }
  if (!judged)
    throw InvalidInput("strength: no material of the body has strengths; give material.NAME.strength to one");
}

void check(const Body& body, const BodyLoadSetup& setup)
{
  const std::size_t count = body.parts.size();
  if (setup.top >= count || setup.back >= count || setup.top == setup.back || count < 3)
    throw InvalidInput(message("body: a load needs a top, a back and ribs among the ", count, " parts; got parts ",
                               setup.top, " and ", setup.back));
  if (!setup.cure_changes.empty() && setup.cure_changes.size() != count)
    throw InvalidInput(
        message("body: ", setup.cure_changes.size(), " changes of temperature for ", count, " parts; give one each"));
}

} // namespace

double BodyLoadCase::margin() const
{
  return worst ? parts[*worst].strength->margin : std::numeric_limits<double>::infinity();
}

BodyLoadStudy study_load(const Body& body, const BodyLoadSetup& setup)
{
  check(body, setup);
  const FreeBody whole(body, setup.top, setup.back);
  BodyLoadStudy study = {.mass = whole.system().system.mass};
  add_string_case(whole, setup, study);
  add_stability(whole, setup, study);
  add_hand_cases(whole, setup, study);
  add_strengths(body, setup, study.cases);
  return study;
}

} // namespace plate
