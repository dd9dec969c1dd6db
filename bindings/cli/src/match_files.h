// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "match_result.h"
#include "output_folder.h"

namespace plate
{

/// Results as JSON and CSV, a design file for each candidate, and pictures: mismatch against mass, the best beside the
/// reference.
void write_match_files(const OutputFolder& folder, const MatchOutcome& outcome, bool timing);

} // namespace plate
