// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "tree.h"

#include <plate/design/keys.h>

#include <string>
#include <string_view>

namespace plate
{

/// Where a value stands, for the head of a message: "top.toml:14" or "--set".
[[nodiscard]] std::string place_of(const Node& node, std::string_view file);

/// Checks each key of a file on its own: known, of the right kind, within its range.
///
/// @throws DesignError for the first fault
void check_tree(const Node& root, const std::string& file, FileKind kind = FileKind::design);

} // namespace plate
