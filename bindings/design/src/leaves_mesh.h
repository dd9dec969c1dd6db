// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <string_view>

namespace plate
{

/// Whether a key of a plate is one of those that no node depends on.
[[nodiscard]] bool leaves_mesh(std::string_view key);

} // namespace plate
