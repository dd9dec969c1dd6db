// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/studies/match.h>

#include "layup_search.h"

#include <plate/laminates/section.h>

#include <cmath>

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

} // namespace plate
