// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <nlohmann/json_fwd.hpp>

#include <string>

namespace plate
{

/// JSON as all commands write it: indented, with a line's end, bytes that are no UTF-8 replaced (names of files may
/// have some).
[[nodiscard]] std::string json_text(const nlohmann::ordered_json& json);

} // namespace plate
