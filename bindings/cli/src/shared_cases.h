// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <cstddef>
#include <vector>

namespace plate
{

/// A load that two designs have in common: its place among the cases of each.
struct SharedCase
{
  std::size_t here;
  std::size_t reference;
};

/// Loads by the same name, in the order of the first.
template <class Case>
[[nodiscard]] std::vector<SharedCase> shared_cases(const std::vector<Case>& cases, const std::vector<Case>& reference)
{
  std::vector<SharedCase> shared;
  for (std::size_t here = 0; here < cases.size(); ++here)
    for (std::size_t there = 0; there < reference.size(); ++there)
      if (cases[here].name == reference[there].name)
        shared.push_back({.here = here, .reference = there});
  return shared;
}

} // namespace plate
