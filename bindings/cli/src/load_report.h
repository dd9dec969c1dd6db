// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "load_result.h"

#include <string>

namespace plate
{

[[nodiscard]] std::string load_text(const LoadOutcome& outcome, bool timing);
[[nodiscard]] std::string load_json(const LoadOutcome& outcome, bool timing);
[[nodiscard]] std::string load_csv(const LoadOutcome& outcome);

} // namespace plate
