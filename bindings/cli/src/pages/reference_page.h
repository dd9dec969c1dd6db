// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <string>

namespace plate
{

/// The page of every key, built-in material and command, in Markdown.
[[nodiscard]] std::string reference_page();

// Its parts, one file each.
[[nodiscard]] std::string key_section();
[[nodiscard]] std::string match_key_section();
[[nodiscard]] std::string material_section();
[[nodiscard]] std::string command_section();

} // namespace plate
