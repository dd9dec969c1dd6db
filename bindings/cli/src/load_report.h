// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "load_result.h"

#include <string>

namespace plate
{

[[nodiscard]] std::string load_text(const LoadOutcome& outcome, bool timing);
[[nodiscard]] std::string load_json(const LoadOutcome& outcome, bool timing);
[[nodiscard]] std::string load_csv(const LoadOutcome& outcome);

/// Index of the case of that name; the number of cases if there is none.
[[nodiscard]] std::size_t find_case(const LoadStudy& study, const std::string& name);

} // namespace plate
