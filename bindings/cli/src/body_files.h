// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "body_result.h"
#include "output_folder.h"

namespace plate
{

/// Modes and mobility as JSON, CSV, VTK files and pictures.
void write_body_files(const OutputFolder& folder, const BodyResult& result, bool timing);

} // namespace plate
