// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/design/starter.h>

#include <string_view>

namespace plate
{

/// A measure as the starter takes it, and what makers usually take.
struct Measure
{
  double value;           ///< [mm]
  std::string_view usual; ///< [mm], in words
};

/// What one family's starters differ in. All lengths in mm, as in a design file.
struct FamilyMeasures
{
  std::string_view name;
  Measure length, lower_bout, centre_bout, upper_bout;
  Measure overall_arching; ///< crown over the glued face of the edge: the rise of the mid-surface and the edge
  Measure centre, bouts, channel, edge; ///< thickness of wood
  Measure hole;                         ///< length of the f-holes
  Measure stop, string_length, bridge_feet;
  Measure bar_length, bar_width, bar_height, bar_offset;
  double flax; ///< thickness of one flax ply of the laminate [mm]
  double core; ///< thickness of its core [mm]
};

[[nodiscard]] const FamilyMeasures& family_measures(InstrumentFamily family);

} // namespace plate
