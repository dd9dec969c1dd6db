// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "compare_result.h"
#include "output_folder.h"

namespace plate
{

/// Writes compare.csv, compare.json and, for each design, pictures: likeness of modes, paired modes side by side,
/// stiffness of the layups over direction. With several designs their names end in _1, _2, ...
///
/// Of bodies top and back have pictures of their own: side_by_side_top, polar_back.
/// Measured modes have no layup and no plate to be drawn: of them only the likeness, where shapes are known.
void write_compare_files(const OutputFolder& folder, const CompareOutcome& outcome, bool timing);

} // namespace plate
