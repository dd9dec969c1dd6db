// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/assemble.h>

#include <functional>
#include <vector>

namespace plate::test
{

/// Orders at which a frequency converges, from the differences between meshes, each twice as fine as the last: no exact
/// value is needed.
///
/// @param model  of 1, 2, 4, ... times the cells
/// @param mode   from 0
[[nodiscard]] std::vector<double> observed_orders(const std::function<Model(int)>& model, int mode, int num_meshes);

/// The same of whatever makes a system.
[[nodiscard]] std::vector<double> orders_of_systems(const std::function<System(int)>& system, int mode, int num_meshes);

} // namespace plate::test
