// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "point_path.h"

#include <cstddef>
#include <vector>

namespace plate
{

/// Marks single points that stick out of a path which is calm without them.
[[nodiscard]] std::vector<char> find_spikes(const PointPath& path);

/// Points at which the path has a corner, ascending.
[[nodiscard]] std::vector<std::size_t> find_corners(const PointPath& path);

} // namespace plate
