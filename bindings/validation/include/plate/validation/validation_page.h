// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/validation/validate.h>

#include <string>
#include <vector>

namespace plate::validation
{

/// The page of all values, ours rounded, with origin and mark of each case, in Markdown.
[[nodiscard]] std::string validation_page(const std::vector<CaseResult>& results);

/// Whether two such pages say the same but for rounding: 3e-5 of a computed value, 0.004 % of a difference.
[[nodiscard]] bool same_page(const std::string& a, const std::string& b);

} // namespace plate::validation
