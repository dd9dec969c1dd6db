// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string>

namespace plate::test
{

/// A design file drawn at random, and what is known of it without reading it.
struct RandomDesign
{
  std::uint64_t seed;
  std::string text;
  std::optional<double> area = {}; ///< of the planform where a formula gives it: rectangle or ellipse less slots [mm^2]
};

/// Draws a whole design: any outline, arch, thickness, holes, bar and layup, each measure inside its range or, one time
/// in fifty, just outside. The same seed gives the same text on every machine.
[[nodiscard]] RandomDesign draw_design(std::uint64_t seed);

} // namespace plate::test
