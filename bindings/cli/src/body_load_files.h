// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "body_load_result.h"
#include "output_folder.h"

namespace plate
{

/// Writes load.csv, load.json, each part of the body as VTK file, and for each case two pictures of top and back:
/// deflection and share of the strength used.
///
/// @param timing  whether load.json holds the seconds
void write_load_files(const OutputFolder& folder, const BodyLoadOutcome& outcome, bool timing);

} // namespace plate
