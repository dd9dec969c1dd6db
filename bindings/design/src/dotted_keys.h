// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <string_view>

namespace plate
{

/// Number of the first line (from 1) in which a dotted key of a TOML text has more than `most` dots; 0 if there is none.
///
/// Strings and comments are passed over as TOML defines them, so the answer holds for every text up to its first fault
/// of syntax, where parsing ends anyway.
[[nodiscard]] int line_of_deep_key(std::string_view text, int most);

} // namespace plate
