// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "match_result.h"

#include <string>
#include <vector>

namespace plate
{

/// A laminate in the notation of orientation codes, each ply with its material and thickness in mm: half of it and `s`
/// where it is symmetric, `~` before a middle that is not repeated. "[0 carbon_ud 0.1/45 flax_ud 0.25/~balsa 1.2]s"
[[nodiscard]] std::string layup_code(const Laminate& laminate);

/// Values of the free keys of a candidate, "; arching.height = 12.4 mm"; empty if none is free or it has those of the
/// start.
[[nodiscard]] std::string shape_words(const MatchOutcome& outcome, std::size_t candidate);

/// Plies of the patches of a candidate, "; patch 1 [0 carbon_ud 0.1]; without patch 2"; empty if they are those of the
/// start.
[[nodiscard]] std::string patch_words(const MatchCandidate& candidate);

/// What the supplies cannot reach of the reference, a sentence each; empty if nothing stands out.
[[nodiscard]] std::vector<std::string> out_of_reach(const MatchOutcome& outcome);

/// Of a search that was stopped before the first laminate: where it was, and what to do.
[[nodiscard]] std::string nothing_found_words(const MatchOutcome& outcome);

/// Which wish nothing keeps to: the limits of mass exclude all stacks, or no laminate is strong enough.
[[nodiscard]] std::string no_fit_words(const MatchOutcome& outcome);

} // namespace plate
