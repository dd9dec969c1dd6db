// SPDX-License-Identifier: MPL-2.0
#pragma once

namespace plate
{

/// Number of threads that the library works with where several serve, at first one. Results are the same bit for bit
/// whatever it is, so it is a setting of the process and not an argument.
///
/// @param count  at least one
/// @throws InvalidInput if count is below one
void set_num_threads(int count);
[[nodiscard]] int num_threads();

} // namespace plate
