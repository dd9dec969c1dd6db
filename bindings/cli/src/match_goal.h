// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "compare_result.h"

#include <plate/design/match_problem.h>
#include <plate/solvers/studies/match.h>

#include <optional>
#include <string>
#include <vector>

namespace plate
{

/// What a match problem wants, with names.
struct NamedGoal
{
  std::string title; ///< of the reference
  std::vector<ComparedMode> targets;
  std::optional<Laminate> laminate; ///< of the reference
  double mass;                      ///< of the reference, 0 if measured [kg]
  MatchGoal goal;
};

/// Solves the reference or, for measured modes, the start design, whose shapes tell the modes.
///
/// @throws DesignError if the modes wanted are not there or measured ones are in another unit
[[nodiscard]] NamedGoal match_goal(const MatchProblem& problem);

} // namespace plate
