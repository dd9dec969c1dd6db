// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <vector>

namespace plate
{

/// Moves labels along a line as little as possible so that none is closer than `spacing` to the next.
///
/// @param wanted  positions in any order
/// @param spacing least distance of two labels
/// @param low, high  limits; if the labels need more, they reach beyond `high`
/// @return positions in the order of `wanted`; labels keep their order, sum of squared moves least within the limits
/// @source isotonic regression by pooling adjacent violators (Barlow et al. 1972)
[[nodiscard]] std::vector<double> stacked(const std::vector<double>& wanted, double spacing, double low, double high);

} // namespace plate
