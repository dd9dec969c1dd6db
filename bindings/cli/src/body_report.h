// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "body_result.h"

#include <string>

namespace plate
{

[[nodiscard]] std::string body_text(const BodyOutcome& outcome, bool timing);
[[nodiscard]] std::string body_json(const BodyOutcome& outcome, bool timing);
[[nodiscard]] std::string body_csv(const BodyResult& result); ///< the modes

} // namespace plate
