// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace plate
{

/// A row of a Markdown table.
[[nodiscard]] std::string markdown_row(const std::vector<std::string>& cells);

/// Header and rule of a Markdown table.
[[nodiscard]] std::string markdown_header(const std::vector<std::string>& cells);

/// Text set as code; empty for empty.
[[nodiscard]] std::string code(std::string_view text);

} // namespace plate
