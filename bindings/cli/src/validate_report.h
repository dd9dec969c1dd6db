// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/validation/validate.h>

#include <string>
#include <vector>

namespace plate
{

/// How the table is printed.
struct ValidateStyle
{
  bool values = false;   ///< a line for each value instead of the worst of each case
  bool coloured = false; ///< failures in red
};

/// Tables by topic and the count.
[[nodiscard]] std::string validate_text(const std::vector<validation::CaseResult>& results, const ValidateStyle& style);

/// The promised keys, one entry for each value.
[[nodiscard]] std::string validate_json(const std::vector<validation::CaseResult>& results);

/// The cases with their sources, nothing computed.
[[nodiscard]] std::string case_list_text(const std::vector<const validation::ReferenceCase*>& cases);
[[nodiscard]] std::string case_list_json(const std::vector<const validation::ReferenceCase*>& cases);

} // namespace plate
