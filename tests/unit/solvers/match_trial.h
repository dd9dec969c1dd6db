// SPDX-License-Identifier: MPL-2.0
// A hidden stack of a set, and whether the search finds a laminate of the same modes again.
#pragma once

#include "changed_plate.h"

#include <plate/materials/library.h>
#include <plate/solvers/studies/match.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <random>

namespace plate::test
{

/// What a workshop may have; sheets are named by the constants of the library.
inline StackSupplies workshop()
{
  StackSupplies supplies;
  for (const double thickness : {0.1e-3, 0.2e-3})
    supplies.sheets.push_back({.material = *find_material("carbon_ud"), .thickness = thickness});
  supplies.sheets.push_back({.material = *find_material("flax_ud"), .thickness = 0.25e-3});
  for (const double thickness : {0.8e-3, 1.2e-3, 1.6e-3})
    supplies.cores.push_back({.material = *find_material("balsa"), .thickness = thickness});
  for (const double degrees : {0.0, 90.0, 45.0, -45.0, 30.0, -30.0, 60.0, -60.0})
    supplies.angles.push_back(Angle::degrees(degrees));
  supplies.max_plies = 8;
  return supplies;
}

/// A stack of the set: two or three plies on either side of a core.
inline Laminate hidden_stack(const StackSupplies& supplies, unsigned seed)
{
  std::mt19937 random(seed);
  const auto one_of = [&](const auto& list) { return list[random() % list.size()]; };
  std::vector<Ply> half;
  const std::size_t count = 2 + random() % 2;
  for (std::size_t i = 0; i < count; ++i)
  {
    const SupplySheet sheet = one_of(supplies.sheets);
    half.push_back({.material = sheet.material, .thickness = sheet.thickness, .angle = one_of(supplies.angles)});
  }
  const SupplySheet core = one_of(supplies.cores);
  Laminate laminate = {half};
  laminate.plies.push_back({.material = core.material, .thickness = core.thickness});
  laminate.plies.insert(laminate.plies.end(), half.rbegin(), half.rend());
  return laminate;
}

inline Model laminated_plate(const Laminate& laminate)
{
  Model model;
  model.mesh = arched_rectangle(total_thickness(laminate));
  model.material.laminate = laminate;
  return model;
}

/// Modes of a plate as a goal, all of them targets.
inline MatchGoal goal_of(const Model& reference, int num_modes)
{
  const System system = assemble(reference);
  const ModalResult modes = solve_modes(system, {.num_modes = num_modes});
  MatchGoal goal{
      .guide = mode_shapes(reference, system.dofs, modes.shapes), .guide_hz = modes.frequencies_hz, .targets = {}};
  for (int mode = 0; mode < num_modes; ++mode)
    goal.targets.push_back({.name = {}, .guide = mode, .frequency_hz = modes.frequencies_hz(mode)});
  return goal;
}

/// One trial: a stack is hidden and searched for from another one.
struct Trial
{
  MatchResult result;
  double seconds;        ///< of the clock
  double greatest_cents; ///< of a mode of the best laminate from the hidden one's
};

/// Greatest difference of a mode of the best laminate found from that of the hidden one [cents].
inline double found_again(const MatchResult& result, const MatchGoal& goal)
{
  if (result.candidates.empty() || result.candidates.front().modes.size() < goal.targets.size())
    return lost_cents;
  double greatest = 0.0;
  for (const MatchedMode& mode : result.candidates.front().modes)
    greatest = std::max(greatest, std::abs(mode.cents));
  return greatest;
}

inline Trial trial(unsigned seed, bool thorough)
{
  const StackSupplies supplies = workshop();
  const MatchGoal goal = goal_of(laminated_plate(hidden_stack(supplies, seed)), 8);
  const Model start = laminated_plate(hidden_stack(supplies, seed + 100));
  const auto begin = std::chrono::steady_clock::now();
  Trial out{.result = match_layups(start, supplies, goal, {.seed = seed, .thorough = thorough}),
            .seconds = 0.0,
            .greatest_cents = 0.0};
  out.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
  out.greatest_cents = found_again(out.result, goal);
  return out;
}

} // namespace plate::test
