// SPDX-License-Identifier: MPL-2.0
// The very last part of a search: other plies in the patches of laminates that are shown.
#include "layup_search.h"

#include <algorithm>
#include <utility>

namespace plate::match
{

/// A candidate with the patches that suit it better than those of the start, if it is among the best.
MatchCandidate LayupSearch::with_best_patches(MatchCandidate best)
{
  constexpr std::size_t num_patched = 4; // of the laminates shown: each takes a dozen full solves
  constexpr int most_steps = 6;
  if (supplies_.max_patch_plies == 0 || start_.patches.empty() || result_.candidates.size() >= num_patched)
    return best;
  const Model plate = best.shape.empty() ? modes_->model(best.laminate) : shape_->model(best.laminate, best.shape);
  const FullModes solved = modes_->full(plate);
  const PatchTrials trials(plate, modes_->dofs(), solved, targets_);
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
