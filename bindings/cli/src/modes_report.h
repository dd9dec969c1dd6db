// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "modes_result.h"

#include <string>
#include <string_view>

namespace plate
{

/// The line every report ends with.
inline constexpr std::string_view caution = "A prediction does not replace a test piece.";

/// Modes as a table for the terminal.
[[nodiscard]] std::string modes_text(const ModesResult& result, bool timing);
/// Modes as JSON; quantities carry their unit in the key, numbers have nine digits.
[[nodiscard]] std::string modes_json(const ModesResult& result, bool timing);
/// Modes as CSV, one line each.
[[nodiscard]] std::string modes_csv(const ModesResult& result);

} // namespace plate
