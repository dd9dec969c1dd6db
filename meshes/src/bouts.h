// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/outline.h>

#include <array>
#include <vector>

namespace plate
{

/// Pieces of a `bouts` outline on the side y > 0, from the neck end to the lower end.
///
/// In order: end arc, shoulder, upper corner's outer curve, its blunt tip, the two halves of the centre bout, the lower
/// corner's blunt tip, its outer curve, flank, end arc.
[[nodiscard]] std::vector<CurvePiece> bouts_half(const BoutsOutline& outline);

/// Indices into bouts_half(): the pieces that run into a corner.
enum BoutsPiece : std::size_t
{
  upper_end,
  upper_shoulder,
  upper_corner,
  upper_tip,
  upper_centre,
  lower_centre,
  lower_tip,
  lower_corner,
  lower_shoulder,
  lower_end,
};

} // namespace plate
