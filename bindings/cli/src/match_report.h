// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "match_result.h"

#include <string>

namespace plate
{

/// Candidates with their modes beside the targets, for the terminal.
[[nodiscard]] std::string match_text(const MatchOutcome& outcome, bool timing);
[[nodiscard]] std::string match_json(const MatchOutcome& outcome, bool timing);
/// One line for each mode of each candidate.
[[nodiscard]] std::string match_csv(const MatchOutcome& outcome);

} // namespace plate
