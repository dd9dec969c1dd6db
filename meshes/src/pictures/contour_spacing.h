// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "polyline.h"

#include <vector>

namespace plate
{

/// Leaves out the parts of contours that run closer to a neighbouring level than an eye can part them, and short ones.
///
/// @param levels   lines of each level, levels in order [picture units]
/// @param distance that lines of neighbouring levels must keep [picture units]
/// @return the lines of each level that are left, in the same order
[[nodiscard]] std::vector<std::vector<Polyline>> without_crowds(const std::vector<std::vector<Polyline>>& levels,
                                                                double distance);

} // namespace plate
