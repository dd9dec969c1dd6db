// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <functional>

namespace plate
{

/// Exit statuses, the same for every command.
inline constexpr int exit_done = 0;
inline constexpr int exit_not_reached = 1; ///< ran, but the accuracy asked for was not reached
inline constexpr int exit_numerics_failed = 1;
inline constexpr int exit_wrong_input = 2;

/// Runs what returns an exit status; errors are written to standard error and become one, too.
[[nodiscard]] int run_guarded(const std::function<int()>& work);

} // namespace plate
