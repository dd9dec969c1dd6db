// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "modes_result.h"
#include "output_folder.h"

namespace plate
{

/// Writes modes.csv, modes.json, plate.vtu and the pictures: each mode, all on one sheet, thickness, arching;
/// with a second design both side by side.
///
/// @param timing  whether modes.json holds the seconds
void write_modes_files(const OutputFolder& folder, const ModesOutcome& outcome, bool timing);

} // namespace plate
