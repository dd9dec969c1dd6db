// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "body_result.h"

#include <nlohmann/json_fwd.hpp>

#include <string>

namespace plate
{

[[nodiscard]] std::string body_text(const BodyOutcome& outcome, bool timing);
[[nodiscard]] std::string body_json(const BodyOutcome& outcome, bool timing);
/// One mode as an entry of `modes`.
[[nodiscard]] nlohmann::ordered_json mode_json(const BodyResult& result, std::size_t mode);
[[nodiscard]] std::string body_csv(const BodyResult& result); ///< the modes

} // namespace plate
