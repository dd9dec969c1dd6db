// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/side_by_side_picture.h>

#include <string>
#include <vector>

namespace plate
{

/// Which modes of two designs belong together: those that both have under one trade name, then the rest in their order.
///
/// @param first, second  names of the modes in ascending order, empty where there is none
/// @return pairs in the order of the first design; modes left over when the other design has no more are not in it
[[nodiscard]] std::vector<ModePair> pair_modes(const std::vector<std::string>& first,
                                               const std::vector<std::string>& second);

} // namespace plate
