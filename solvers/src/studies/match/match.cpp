// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/studies/match.h>

#include "layup_search.h"

#include <plate/laminates/section.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace plate
{

BendingRatios bending_ratios(const Laminate& laminate)
{
  const Eigen::Matrix3d D =
      section_stiffness(laminate, total_thickness(laminate), Eigen::Matrix3d::Identity(), MaterialAxes()).P[2];
  return {.cross = D(0, 0) / D(1, 1), .twist = (D(0, 1) + 2.0 * D(2, 2)) / std::sqrt(D(0, 0) * D(1, 1))};
}

MatchResult match_layups(const Model& start, const StackSupplies& supplies, const MatchGoal& goal,
                         const MatchOptions& options, const MatchShape& shape)
{
  return match::LayupSearch(start, supplies, goal, options, shape).run();
}

void solve_candidate(const Model& plate, const MatchGoal& goal, MatchCandidate& candidate)
{
  const match::ModeTargets targets(goal);
  const match::SolvedTargets solved = targets.solve(plate, match::Losses::computed);
  Eigen::VectorXd reduced_hz = Eigen::VectorXd::Constant(static_cast<Eigen::Index>(goal.targets.size()),
                                                         std::numeric_limits<double>::quiet_NaN());
  for (const MatchedMode& mode : candidate.modes)
    reduced_hz(static_cast<Eigen::Index>(mode.target)) = mode.reduced_hz;
  candidate.mass = solved.mass;
  targets.describe(solved.found, reduced_hz, candidate);
}

void keep_front(std::vector<MatchCandidate>& candidates)
{
  std::stable_sort(candidates.begin(), candidates.end(),
                   [](const MatchCandidate& a, const MatchCandidate& b) { return a.score < b.score; });
  std::vector<MatchCandidate> front;
  for (MatchCandidate& candidate : candidates)
    if (front.empty() || candidate.mass < front.back().mass)
      front.push_back(std::move(candidate));
  candidates = std::move(front);
}

} // namespace plate
