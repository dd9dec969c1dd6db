// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "compare_result.h"

#include <plate/design/measured_modes.h>

namespace plate
{

/// Pairs measured modes with those of a plate.
///
/// With shapes by the modal assurance criterion, less a tenth for each octave between the frequencies. Without, M1, M2
/// and M5 go to the design's mode of that name if it has one; the others follow one another as they are numbered, those
/// with names left out on both sides.
/// @throws InvalidInput if frequencies are in another unit, or fewer than fewest_measured_places of a mode lie on the
///   plate
[[nodiscard]] PairedModes pair_measured(const MeasuredModes& measured, const ModesResult& modes);

/// Pairs measured modes of a body with those computed.
///
/// A mode with a name that the body has goes to the mode of that name; of the others, the names left out on both sides,
/// each goes to one of its own, so that the intervals add up to least. A0, A1, CBR, B1- and B1+ go to nothing else.
/// @throws InvalidInput if frequencies are in another unit, or the list has shapes
[[nodiscard]] PairedModes pair_measured_body(const MeasuredModes& measured, const Compared& body);

} // namespace plate
