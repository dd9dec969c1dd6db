// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "modes_result.h"

#include <nlohmann/json_fwd.hpp>

#include <string>
#include <string_view>

namespace plate
{

/// The line every report ends with.
inline constexpr std::string_view caution = "A prediction does not replace a test piece.";

/// Modes as a table for the terminal; with a second design its table and one of the differences.
[[nodiscard]] std::string modes_text(const ModesOutcome& outcome, bool timing);
/// Modes as JSON; quantities carry their unit in the key, numbers have nine digits. A second design is under `beside`
/// with the same keys, and `pairs` says which modes belong together.
[[nodiscard]] std::string modes_json(const ModesOutcome& outcome, bool timing);
/// One mode of a design as an entry of `modes`.
[[nodiscard]] nlohmann::ordered_json mode_json(const ModesResult& result, Eigen::Index mode);
/// Modes of one design as CSV, one line each.
[[nodiscard]] std::string modes_csv(const ModesResult& result);

} // namespace plate
