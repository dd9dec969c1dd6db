// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace plate
{

/// Parts of a dotted path, or of a key's pattern with each `[]` as a part of its own.
[[nodiscard]] std::vector<std::string> split_path(std::string_view path);

/// Puts the parts of a path together again.
[[nodiscard]] std::string join_path(const std::vector<std::string>& parts);

/// Whether a part of a path is the number of a list entry.
[[nodiscard]] inline bool is_entry_number(std::string_view part)
{
  return !part.empty() && std::all_of(part.begin(), part.end(), [](char c) { return c >= '0' && c <= '9'; });
}

} // namespace plate
