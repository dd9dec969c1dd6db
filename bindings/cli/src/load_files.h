// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "load_result.h"
#include "output_folder.h"

namespace plate
{

/// Writes load.csv, load.json, load.vtu and for each case two pictures: deflection and share of the strength used.
///
/// @param timing  whether load.json holds the seconds
void write_load_files(const OutputFolder& folder, const LoadOutcome& outcome, bool timing);

} // namespace plate
