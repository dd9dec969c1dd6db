// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "load_result.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace plate
{

/// What is said with every result of load.
[[nodiscard]] const std::vector<std::string_view>& load_cautions();

/// What a case is, in a line: "strings, 87.0 N through the bridge's feet".
[[nodiscard]] std::string case_words(const LoadCase& load);

/// Ply and material of the worst place: "ply 3 (flax_cloth)", "bar (spruce)".
[[nodiscard]] std::string ply_words(const StrengthPlace& place);

/// Strengths of a material with their source.
struct StrengthSource
{
  const Material* material;
  std::string source;
};

/// Of all materials of some models that have strengths, equal ones once.
[[nodiscard]] std::vector<StrengthSource> strength_sources(std::span<const Model* const> models);

/// Names of their materials that have none, each once: they are not judged.
[[nodiscard]] std::vector<std::string> not_judged(std::span<const Model* const> models);

/// "hinged", ...
[[nodiscard]] std::string_view rim_word(EdgeSupport rim);

} // namespace plate
