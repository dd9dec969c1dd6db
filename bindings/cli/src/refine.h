// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "modes_result.h"
#include "run_limits.h"

namespace plate
{

/// Modes of a design on meshes of smaller and smaller size until every error bar is below a part of its frequency.
///
/// The next size follows from the order at which the bars fell last, at first from that of the elements on a smooth
/// plate with sharp corners.
/// @param accuracy  greatest error bar over frequency [-]
/// @return the last mesh that fits the limits, with what was tried; `accurate` says whether it is good enough
/// @throws as compute_modes()
[[nodiscard]] ModesResult refine_modes(const Design& design, int count, double accuracy, const RunLimits& limits);

} // namespace plate
