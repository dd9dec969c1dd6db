// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "laminate_result.h"
#include "output_folder.h"

namespace plate
{

/// Writes the results as JSON, stiffness by direction as CSV and as a picture in both formats.
void write_laminate_files(const OutputFolder& folder, const LaminateResult& result);

} // namespace plate
