// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "body_result.h"

#include <plate/post/mode_pairs.h>

#include <nlohmann/json_fwd.hpp>

#include <string>
#include <vector>

namespace plate
{

/// Modes of two bodies that belong together, by the shapes of both plates.
struct BodyComparison
{
  std::vector<ShapePair> pairs;   ///< modes of the reference with modes of the body
  std::vector<int> unpaired;      ///< modes of the reference like none of the body
  Eigen::VectorXd frequencies_hz; ///< of the body, as far as modes were searched [Hz]
};

/// @throws InvalidInput if the plates have no places in common
[[nodiscard]] BodyComparison compare_bodies(const BodyResult& body, const BodyResult& reference);

/// Mass, balance, air, modes and third octaves of both bodies side by side.
[[nodiscard]] std::string comparison_text(const BodyResult& body, const BodyResult& reference);
[[nodiscard]] nlohmann::ordered_json comparison_json(const BodyResult& body, const BodyResult& reference);
[[nodiscard]] std::string comparison_csv(const BodyResult& body, const BodyResult& reference); ///< the pairs

} // namespace plate
