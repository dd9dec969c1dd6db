// SPDX-License-Identifier: MPL-2.0
#include "knobs.h"
#include "layup_modes.h"
#include "match_trial.h"
#include "relative.h"

#include <plate/core/error.h>
#include <plate/core/threads.h>
#include <plate/post/mode_loss.h>

#include <doctest/doctest.h>

using namespace plate;
using namespace plate::test;

namespace
{

/// A small search: few stacks of thin sheets, two modes.
struct SmallSearch
{
  StackSupplies supplies;
  Laminate hidden;
  MatchGoal goal;
  Model start;

  SmallSearch()
  {
    supplies = workshop();
    supplies.max_plies = 4;
    supplies.angles = {Angle::degrees(0.0), Angle::degrees(90.0), Angle::degrees(45.0), Angle::degrees(-45.0)};
    const SupplySheet carbon = supplies.sheets[1];
    const Ply along = {.material = carbon.material, .thickness = carbon.thickness};
    hidden.plies = {along, {.material = supplies.cores[1].material, .thickness = supplies.cores[1].thickness}, along};
    goal = goal_of(laminated_plate(hidden), 4);
    start = laminated_plate(hidden);
  }

  [[nodiscard]] MatchResult run() const { return match_layups(start, supplies, goal, {.num_reduced = 400}); }
};

bool same(const MatchResult& a, const MatchResult& b)
{
  if (a.candidates.size() != b.candidates.size())
    return false;
  for (std::size_t i = 0; i < a.candidates.size(); ++i)
    if (a.candidates[i].mismatch != b.candidates[i].mismatch || a.candidates[i].mass != b.candidates[i].mass)
      return false;
  return true;
}

} // namespace

TEST_CASE("a hidden stack is found again") // ten, each with 20 000 solved: match_trials_test
{
  const Trial found = trial(1, false);
  CHECK(found.result.num_considered >= 100000);
  CHECK(found.greatest_cents < 2.0); // less than an ear or a tap tone tells
}

TEST_CASE("shown laminates: none beats another, what they weigh is theirs, reduced and full agree within 5 cents")
{
  const SmallSearch search;
  const MatchResult result = search.run();
  REQUIRE(result.candidates.size() >= 2);
  CHECK(result.candidates.front().mismatch < 0.1); // the hidden one is in the set
  for (std::size_t i = 0; i < result.candidates.size(); ++i)
  {
    const MatchCandidate& candidate = result.candidates[i];
    const Model plate = laminated_plate(candidate.laminate);
    CHECK(candidate.mass == doctest::Approx(assemble(plate).mass).epsilon(1e-12));
    if (i > 0)
    {
      CHECK(candidate.mismatch > result.candidates[i - 1].mismatch);
      CHECK(candidate.mass < result.candidates[i - 1].mass);
    }
    for (const MatchedMode& mode : candidate.modes)
      CHECK(std::abs(1200.0 * std::log2(mode.reduced_hz / mode.frequency_hz)) < 5.0);
  }
}

TEST_CASE("the same seed gives the same bits, whatever the number of threads")
{
  const SmallSearch search;
  const MatchResult one = search.run();
  set_num_threads(2);
  const MatchResult two = search.run();
  set_num_threads(1);
  CHECK(same(one, two));
}

TEST_CASE("limits of mass hold; limits that nothing keeps to give the nearest and say so")
{
  SmallSearch search;
  const double mass = assemble(search.start).mass;
  search.goal.most_mass = 0.9 * mass;
  const MatchResult lighter = search.run();
  CHECK(lighter.fits);
  REQUIRE(!lighter.candidates.empty());
  for (const MatchCandidate& candidate : lighter.candidates)
    CHECK(candidate.mass <= 0.9 * mass);
  search.goal.most_mass = 0.01 * mass;
  const MatchResult none = search.run();
  CHECK(!none.fits);
  REQUIRE(!none.candidates.empty());
  CHECK(none.candidates.front().mass <= 1.03 * none.reach.mass.least);
}

TEST_CASE("height of the arch and angles of plies are found together")
{
  SmallSearch search;
  for (const std::size_t i : {0U, 2U})
    search.hidden.plies[i].angle = Angle::degrees(20.0); // between the angles searched
  Model hidden = laminated_plate(search.hidden);
  hidden.mesh = arched_rectangle(total_thickness(search.hidden), false, 0.0155);
  search.goal = goal_of(hidden, 4);
  search.supplies.sheets = {search.supplies.sheets[1]};
  search.supplies.any_angle = true;
  search.supplies.angles.clear();
  for (int degrees = -75; degrees <= 90; degrees += 15)
    search.supplies.angles.push_back(Angle::degrees(degrees));
  ChangedPlate plate(search.start, [](std::span<const double> height, Model& model)
                     { model.mesh = arched_rectangle(model.mesh.thickness.front(), false, height[0]); });
  const MatchResult result = match_layups(search.start, search.supplies, search.goal, {.num_reduced = 400},
                                          {.plate = &plate, .start = {0.012}, .low = {0.008}, .high = {0.018}});
  REQUIRE(!result.candidates.empty());
  REQUIRE(result.candidates.front().shape.size() == 1);
  CHECK(result.candidates.front().mismatch < 2.0); // zero is possible; less than a tap tone tells
}

TEST_CASE("likeness that is missing counts, and is worth some cents")
{
  SmallSearch search;
  search.goal.most_mass = 0.9 * assemble(search.start).mass; // the hidden one is out of reach
  const MatchResult by_cents = search.run();
  search.goal.likeness = 0.95;
  const MatchResult alike = search.run();
  const auto missing = [](const MatchCandidate& candidate)
  {
    double sum = 0.0;
    for (const MatchedMode& mode : candidate.modes)
      sum += std::pow(std::max(0.95 - mode.assurance, 0.0), 2);
    return unlike_cents * std::sqrt(sum / 4.0);
  };
  REQUIRE(!by_cents.candidates.empty());
  REQUIRE(!alike.candidates.empty());
  for (const MatchCandidate& candidate : by_cents.candidates)
    CHECK(candidate.score == candidate.mismatch);
  for (const MatchCandidate& candidate : alike.candidates)
    CHECK(candidate.score == doctest::Approx(std::hypot(candidate.mismatch, missing(candidate))).epsilon(1e-12));
  const MatchCandidate& first = by_cents.candidates.front();
  CHECK(alike.candidates.front().score <= std::hypot(first.mismatch, missing(first)) + 1.0); // 1: of the reduced model
}

TEST_CASE("losses of reduced modes are those of full ones, bars and patches included")
{
  SmallSearch search;
  const Laminate& laminate = search.hidden;
  Model plate = whole_plate(); // with a bar and a patch
  plate.material.laminate = laminate;
  std::fill(plate.mesh.thickness.begin(), plate.mesh.thickness.end(), total_thickness(laminate));
  for (Ply* ply : {&plate.patches.front().laminate.plies.front(), &plate.material.laminate.plies.front()})
    ply->material.loss.E1 = 0.03;
  plate.bars.front().material.loss = {.E1 = 0.02, .E2 = 0.02, .E3 = 0.02, .G12 = 0.04, .G13 = 0.04, .G23 = 0.04};
  std::vector<Laminate> laminates = {plate.material.laminate, laminate};
  for (const double degrees : {20.0, 50.0, 80.0})
    for (const std::size_t ply : {0U, 2U})
    {
      laminates.push_back(laminate);
      laminates.back().plies[ply].angle = Angle::degrees(degrees);
    }
  match::LayupModes modes(plate, laminates, 5, match::Losses::computed);
  modes.learn(std::vector<Laminate>{plate.material.laminate});
  const match::QuickModes quick = modes.quick(plate.material.laminate);
  const match::FullModes full = modes.full(plate);
  const Eigen::VectorXd losses = mode_losses(plate, modes.dofs(), full.modal.shapes);
  for (Eigen::Index mode = 0; mode < 5; ++mode)
    CHECK(quick.losses(mode) == relative(losses(mode), 0.01)); // the torsion of bars is interpolated
}

TEST_CASE("losses that are off count, and are worth some cents")
{
  SmallSearch search;
  search.goal.loss = 0.05;
  const Model reference = laminated_plate(search.hidden);
  const System system = assemble(reference);
  const ModalResult modes = solve_modes(system, {.num_modes = 4});
  const Eigen::VectorXd losses = mode_losses(reference, system.dofs, modes.shapes);
  for (std::size_t t = 0; t < search.goal.targets.size(); ++t)
    search.goal.targets[t].loss = 1.5 * losses(static_cast<Eigen::Index>(t)); // more than the hidden one has
  const MatchResult result = search.run();
  REQUIRE(!result.candidates.empty());
  for (const MatchCandidate& candidate : result.candidates)
  {
    double sum = 0.0;
    for (const MatchedMode& mode : candidate.modes)
      sum += std::pow(std::max(std::abs(mode.loss / *search.goal.targets[mode.target].loss - 1.0) - 0.05, 0.0), 2);
    CHECK(candidate.score == doctest::Approx(std::hypot(candidate.mismatch, off_loss_cents * std::sqrt(sum / 4.0))));
  }
  // The hidden one misses by a third less 0.05 in every mode: what is found is no worse.
  CHECK(result.candidates.front().score <= off_loss_cents * (1.0 / 3.0 - 0.05) + 1.0); // 1: of the reduced model
  search.goal.targets.front().loss.reset();
  CHECK_THROWS_AS(static_cast<void>(search.run()), InvalidInput);
}

TEST_CASE("what is refused is listed and gives way; all refused: nothing fits")
{
  const SmallSearch search;
  const MatchResult all = search.run();
  REQUIRE(all.candidates.size() >= 2);
  const auto without = [&](const std::function<bool(const MatchCandidate&)>& accepts)
  { return match_layups(search.start, search.supplies, search.goal, {.num_reduced = 400, .accepts = accepts}); };
  const double best = all.candidates.front().mismatch;
  const MatchResult second = without([&](const MatchCandidate& candidate) { return candidate.mismatch > best + 0.1; });
  CHECK(second.fits);
  REQUIRE(!second.candidates.empty());
  REQUIRE(!second.refused.empty());
  for (const MatchCandidate& refused : second.refused)
    CHECK(refused.mismatch <= best + 0.1);
  CHECK(second.candidates.front().mismatch > best + 0.1);
  CHECK(second.candidates.front().mismatch <= all.candidates[1].mismatch); // the next best, perhaps a heavier one
  const MatchResult none = without([](const MatchCandidate&) { return false; });
  CHECK(!none.fits);
  CHECK(none.candidates.empty());
  CHECK(none.refused.size() >= all.candidates.size());
}

TEST_CASE("a search that is stopped gives what it has")
{
  const SmallSearch search;
  int calls = 0;
  const MatchResult stopped = match_layups(search.start, search.supplies, search.goal,
                                           {.progress = [&](const std::string&) { return ++calls < 5; }});
  CHECK(!stopped.complete);
  CHECK(stopped.num_considered > 0);
}

TEST_CASE("supplies and goals that cannot be are refused")
{
  SmallSearch search;
  MatchGoal no_targets = search.goal;
  no_targets.targets.clear();
  CHECK_THROWS_AS(static_cast<void>(match_layups(search.start, search.supplies, no_targets)), InvalidInput);
  MatchGoal no_guide = search.goal;
  no_guide.targets.front().guide = 17;
  CHECK_THROWS_AS(static_cast<void>(match_layups(search.start, search.supplies, no_guide)), InvalidInput);
  StackSupplies no_core = search.supplies;
  no_core.cores.clear();
  no_core.core = CoreUse::required;
  CHECK_THROWS_AS(static_cast<void>(match_layups(search.start, no_core, search.goal)), InvalidInput);
  search.supplies.sheets.clear();
  CHECK_THROWS_AS(static_cast<void>(match_layups(search.start, search.supplies, search.goal)), InvalidInput);
}
