// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "compare_result.h"

#include <plate/design/match_problem.h>
#include <plate/solvers/studies/match.h>

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace plate
{

/// Weakest place of a laminate under all cases of plate load.
struct MatchMargin
{
  double margin;         ///< before knock-downs; NaN where the loads could not be solved [-]
  std::string load_case; ///< or why they could not
};

/// What the command match computes.
struct MatchOutcome
{
  MatchProblem problem;
  std::string reference; ///< its title
  std::vector<ComparedMode> targets;
  std::optional<Laminate> reference_laminate = {}; ///< none for measured modes
  double reference_mass = 0.0;                     ///< 0 for measured modes [kg]
  MatchResult result = {};
  std::vector<DesignDocument> designs = {}; ///< of the candidates
  std::vector<MatchMargin> margins = {};    ///< of the candidates; empty if none is wanted
  std::vector<MatchMargin> refused = {};    ///< margins of result.refused
  double seconds = 0.0;                     ///< [s]
};

/// @param goes_on  called with what is being done; false stops with the best so far
/// @throws DesignError if the reference has not the modes wanted; as match_layups()
[[nodiscard]] MatchOutcome compute_match(MatchProblem problem, std::uint64_t seed,
                                         const std::function<bool(const std::string& stage)>& goes_on);

} // namespace plate
