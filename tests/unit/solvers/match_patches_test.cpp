// SPDX-License-Identifier: MPL-2.0
#include "match_trial.h"
#include "patch_trials.h"
#include "relative.h"

#include <doctest/doctest.h>

using namespace plate;
using namespace plate::test;

namespace
{

/// A laminated plate with a patch on its inside.
struct PatchedPlate
{
  StackSupplies supplies = workshop();
  Model model;

  PatchedPlate()
  {
    supplies.max_plies = 2;
    supplies.cores.clear();
    supplies.angles = {Angle::degrees(0.0), Angle::degrees(90.0), Angle::degrees(45.0)};
    model = laminated_plate({{sheet(2, 0.0), sheet(1, 90.0), sheet(2, 0.0)}});
    model.patches = {{.side = PlateSide::inside,
                      .region = EllipseRegion{.centre = {-0.03, -0.01}, .axes = {0.16, 0.1}},
                      .laminate = {{sheet(1, 0.0)}}}};
  }

  [[nodiscard]] Ply sheet(std::size_t number, double degrees) const
  {
    const SupplySheet& from = supplies.sheets[number];
    return {.material = from.material, .thickness = from.thickness, .angle = Angle::degrees(degrees)};
  }
};

double mass_of(const Model& model)
{
  return assemble(model).mass;
}

} // namespace

TEST_CASE("changed patches: mass is exact, nothing changed is nothing, the best is among those that are then solved")
{
  const PatchedPlate plate;
  Model reference = plate.model;
  reference.patches.front().laminate = {{plate.sheet(1, 45.0)}};
  const MatchGoal goal = goal_of(reference, 4);
  const match::ModeTargets targets(goal);
  const System system = assemble(plate.model);
  const match::FullModes solved = {.modal = solve_modes(system, {.num_modes = 10}), .mass = system.mass};
  Eigen::MatrixXd others(system.dofs.num_equations, 0);
  for (const Laminate& plies : {Laminate(), Laminate{{plate.sheet(0, 0.0)}}, Laminate{{plate.sheet(0, 90.0)}},
                                Laminate{{plate.sheet(1, 90.0)}}, Laminate{{plate.sheet(2, 45.0)}}})
  {
    const Model other = match::with_patches(plate.model, {plies});
    others.conservativeResize(Eigen::NoChange, others.cols() + 10);
    others.rightCols(10) = solve_modes(assemble(other), {.num_modes = 10}).shapes;
  }
  const match::PatchTrials trials(plate.model, solved, others, targets);
  const Eigen::VectorXd before =
      targets.find(plate.model, system.dofs, solved.modal, match::Losses::left_out).frequencies_hz;
  CHECK(trials.estimate({plate.model.patches.front().laminate}).score ==
        relative(targets.mismatch_as_is(before), 1e-6));

  std::vector<std::pair<double, double>> scores; // estimated, solved
  std::vector<Laminate> fillings = {{}};
  for (const std::size_t sheet : {0U, 1U, 2U})
    for (const double degrees : {0.0, 30.0, 45.0, 60.0, 90.0, -45.0})
      fillings.push_back({{plate.sheet(sheet, degrees)}});
  for (const Laminate& plies : fillings)
  {
    const Model changed = match::with_patches(plate.model, {plies});
    const match::PatchTrials::Estimate estimate = trials.estimate({plies});
    CHECK(estimate.mass == relative(mass_of(changed), 1e-9));
    const match::SolvedTargets full = targets.solve(changed, match::Losses::left_out);
    scores.emplace_back(estimate.score, targets.mismatch_as_is(full.found.frequencies_hz));
  }
  std::sort(scores.begin(), scores.end());
  const auto solved_score = [](const auto& a, const auto& b) { return a.second < b.second; };
  CHECK(std::min_element(scores.begin(), scores.end(), solved_score) - scores.begin() <
        static_cast<std::ptrdiff_t>(match::num_patches_solved));
}

TEST_CASE("plies of patches come, go and change at the side away from the plate")
{
  const PatchedPlate plate;
  const Ply other = plate.sheet(0, 45.0);
  const Laminate& one = plate.model.patches.front().laminate;
  const auto found = match::neighbours({one}, plate.model.patches, {other}, 2);
  const auto has = [&](std::size_t num_plies, std::size_t at)
  {
    return std::any_of(found.begin(), found.end(),
                       [&](const match::PatchPlies& patches)
                       {
                         const std::vector<Ply>& plies = patches.front().plies;
                         return plies.size() == num_plies && (num_plies == 0 || plies[at].thickness == other.thickness);
                       });
  };
  CHECK(has(0, 0));
  CHECK(has(1, 0));
  CHECK(has(2, 0)); // on the inside: farthest from the plate is the first
  CHECK(!has(2, 1));
}

TEST_CASE("patches that may change make laminates that suit better, and these are what they are said to be")
{
  PatchedPlate plate;
  Model reference = plate.model;
  reference.patches.front().laminate = {{plate.sheet(0, 90.0)}};
  const MatchGoal goal = goal_of(reference, 4);
  const MatchResult fixed = match_layups(plate.model, plate.supplies, goal, {.num_reduced = 400});
  plate.supplies.max_patch_plies = 1;
  const MatchResult result = match_layups(plate.model, plate.supplies, goal, {.num_reduced = 400});
  REQUIRE(!fixed.candidates.empty());
  REQUIRE(!result.candidates.empty());
  const MatchCandidate& best = result.candidates.front();
  CHECK(best.score < 0.9 * fixed.candidates.front().score);
  REQUIRE(best.patches.size() == 1);
  Model found = match::with_patches(plate.model, best.patches);
  found.material.laminate = best.laminate;
  std::fill(found.mesh.thickness.begin(), found.mesh.thickness.end(), total_thickness(best.laminate));
  CHECK(best.mass == relative(mass_of(found), 1e-9));
  const ModalResult modes = solve_modes(assemble(found), {.num_modes = 12});
  for (const MatchedMode& mode : best.modes)
    CHECK(mode.frequency_hz == relative(modes.frequencies_hz(mode.mode), 1e-7));
}
