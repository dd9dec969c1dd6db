// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "body_result.h"
#include "output_folder.h"

namespace plate
{

/// Modes, mobility and sound as JSON, CSV, VTK files and pictures; of a reference its modes as picture and CSV.
void write_body_files(const OutputFolder& folder, const BodyOutcome& outcome, bool timing);

} // namespace plate
