// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "output_folder.h"
#include "sensitivity_result.h"

#include <string>

namespace plate
{

/// Table of what a workshop change of each key does, for the terminal.
[[nodiscard]] std::string sensitivity_text(const SensitivityOutcome& outcome, bool timing);
/// All derivatives as JSON.
[[nodiscard]] std::string sensitivity_json(const SensitivityOutcome& outcome, bool timing);
/// All derivatives as CSV, one line for each key.
[[nodiscard]] std::string sensitivity_csv(const SensitivityOutcome& outcome);

/// Writes sensitivity.csv, sensitivity.json, the maps of thickness as pictures and those of all modes as VTK
/// file; of a body those of top and back.
void write_sensitivity_files(const OutputFolder& folder, const SensitivityOutcome& outcome, bool timing);

} // namespace plate
