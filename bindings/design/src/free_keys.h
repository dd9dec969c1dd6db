// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "tree.h"

#include <plate/design/match_problem.h>

#include <string>
#include <vector>

namespace plate
{

/// An entry of [free] as it stands in a match problem.
struct GivenFreeKey
{
  std::string key; ///< of the start design
  Node range;
};

/// Takes the table [free] out of a problem: its names are keys of a design, with dots in them, quoted or not.
///
/// @throws DesignError if it is no table
[[nodiscard]] std::vector<GivenFreeKey> take_free_keys(Node& problem, const std::string& file);

/// @throws DesignError if a key is not numeric or its range no ascending pair of values the key may have
[[nodiscard]] std::vector<FreeKey> checked_free_keys(const std::vector<GivenFreeKey>& given,
                                                     const DesignDocument& start, const std::string& file);

} // namespace plate
