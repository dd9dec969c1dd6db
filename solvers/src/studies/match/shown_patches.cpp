// SPDX-License-Identifier: MPL-2.0
// The very last part of a search: other plies in the patches of laminates that are shown.
#include "layup_search.h"

#include <algorithm>
#include <utility>

namespace plate::match
{

std::vector<std::size_t> unlike_plies(std::size_t num_choices)
{
  constexpr std::size_t most = 5;
  std::vector<std::size_t> out;
  const std::size_t count = std::min(most, num_choices);
  for (std::size_t k = 0; k < count; ++k)
    out.push_back((num_choices - 1) * k / std::max<std::size_t>(count - 1, 1));
  return out;
}

/// Modes of a plate without its patches, and with single plies unlike each other in all of them.
Eigen::MatrixXd LayupSearch::modes_of_others(const Model& plate)
{
  std::vector<PatchPlies> others = {PatchPlies(plate.patches.size())};
  for (const std::size_t ply : unlike_plies(space_.choices().size()))
    others.push_back(PatchPlies(plate.patches.size(), Laminate{{space_.choices()[ply].ply}}));
  Eigen::MatrixXd out(modes_->dofs().num_equations, 0);
  for (const PatchPlies& patches : others)
  {
    const Eigen::MatrixXd shapes = modes_->full(with_patches(plate, patches)).modal.shapes;
    out.conservativeResize(Eigen::NoChange, out.cols() + shapes.cols());
    out.rightCols(shapes.cols()) = shapes;
  }
  return out;
}

/// A candidate with the patches that suit it better than those of the start, if it is among the best.
MatchCandidate LayupSearch::with_best_patches(MatchCandidate best)
{
  constexpr std::size_t num_patched = 4; // of the laminates shown: each takes a dozen full solves
  constexpr int most_steps = 6;
  if (supplies_.max_patch_plies == 0 || start_.patches.empty() || result_.candidates.size() >= num_patched)
    return best;
  const Model plate = best.shape.empty() ? modes_->model(best.laminate) : shape_->model(best.laminate, best.shape);
  const FullModes solved = modes_->full(plate);
  const PatchTrials trials(plate, solved, modes_of_others(plate), targets_);
  for (int step = 0; step < most_steps && goes_on("changing patches"); ++step)
    if (!better_patches(plate, trials, best))
      break;
  return best;
}

/// Solves the most promising changes of a candidate's patches in full.
///
/// @return whether one of them is better; it becomes the candidate
bool LayupSearch::better_patches(const Model& plate, const PatchTrials& trials, MatchCandidate& best)
{
  std::vector<Ply> choices;
  for (const LayerChoice& choice : space_.choices())
    choices.push_back(choice.ply);
  PatchPlies now = best.patches;
  if (now.empty())
    for (const Patch& patch : plate.patches)
      now.push_back(patch.laminate);
  const MassLimits limits = mass_limits(goal_);
  std::vector<std::pair<double, PatchPlies>> promising;
  for (PatchPlies& patches :
       neighbours(now, start_.patches, choices, static_cast<std::size_t>(supplies_.max_patch_plies)))
    if (const PatchTrials::Estimate estimate = trials.estimate(patches);
        estimate.mass >= limits.least && estimate.mass <= limits.most)
      promising.emplace_back(estimate.score, std::move(patches));
  std::stable_sort(promising.begin(), promising.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  promising.resize(std::min(promising.size(), num_patches_solved));
  bool better = false;
  for (const auto& [score, patches] : promising)
  {
    const Model changed = with_patches(plate, patches);
    MatchCandidate other = candidate(best.laminate, changed, modes_->full(changed));
    other.shape = best.shape;
    other.patches = patches;
    if (other.score < best.score)
    {
      best = std::move(other);
      better = true;
    }
  }
  return better;
}

} // namespace plate::match
