// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "laminate_result.h"

#include <string>

namespace plate
{

/// Constants of a laminate for the terminal.
[[nodiscard]] std::string laminate_text(const LaminateResult& result);
/// Constants of a laminate as JSON; quantities carry their unit in the key, numbers have nine digits.
[[nodiscard]] std::string laminate_json(const LaminateResult& result);
/// Stiffness of strips by their direction as CSV, one line each.
[[nodiscard]] std::string polar_csv(const LaminateResult& result);

} // namespace plate
