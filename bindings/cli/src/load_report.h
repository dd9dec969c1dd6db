// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "load_result.h"

#include <string>
#include <vector>

namespace plate
{

[[nodiscard]] std::string load_text(const LoadOutcome& outcome, bool timing);
[[nodiscard]] std::string load_json(const LoadOutcome& outcome, bool timing);
[[nodiscard]] std::string load_csv(const LoadOutcome& outcome);

/// A load that two designs have in common: its place among the cases of each.
struct SharedCase
{
  std::size_t here;
  std::size_t reference;
};

/// Loads by the same name, in the order of the first study.
[[nodiscard]] std::vector<SharedCase> shared_cases(const LoadStudy& study, const LoadStudy& reference);

} // namespace plate
