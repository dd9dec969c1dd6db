// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/validation/reference_case.h>

#include <string>
#include <string_view>
#include <vector>

namespace plate
{

/// Whether a pattern stands somewhere in a text, whatever the case of its letters; * stands for anything.
[[nodiscard]] bool occurs_in(std::string_view text, std::string_view pattern);

/// Cases with a pattern in name, topic or source; all for an empty one.
///
/// @throws UsageError naming the nearest case if there are none
[[nodiscard]] std::vector<const validation::ReferenceCase*> select_cases(const std::string& pattern);

} // namespace plate
