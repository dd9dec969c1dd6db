// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <cstdint>

namespace plate::test
{

/// Tries designs of consecutive seeds; each must end in modes or in a clear error. Prints how many did which.
void check_designs(std::uint64_t first_seed, int count);

} // namespace plate::test
