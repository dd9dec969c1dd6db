// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "compare_result.h"

#include <plate/design/measured_modes.h>

namespace plate
{

/// Pairs measured modes with those of a design.
///
/// With shapes by the modal assurance criterion, less a tenth for each octave between the frequencies. Without, M1, M2
/// and M5 go to the design's mode of that name if it has one; the others follow one another as they are numbered, those
/// with names left out on both sides.
/// @throws InvalidInput if frequencies are in another unit, or fewer than fewest_measured_places of a mode lie on the
///   plate
[[nodiscard]] ComparedDesign pair_measured(const MeasuredModes& measured, ComparedPlate plate);

} // namespace plate
