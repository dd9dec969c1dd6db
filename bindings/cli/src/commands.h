// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "command_line.h"

namespace plate
{

/// Exit statuses, the same for every command.
inline constexpr int exit_done = 0;
inline constexpr int exit_not_reached = 1; ///< ran, but the accuracy asked for was not reached
inline constexpr int exit_numerics_failed = 1;
inline constexpr int exit_wrong_input = 2;

/// Each runs one command, prints its results on standard output and returns the exit status.
[[nodiscard]] int run_command(const TextRequest& request);
[[nodiscard]] int run_command(const StartRequest& request);
[[nodiscard]] int run_command(const ModesRequest& request);
[[nodiscard]] int run_command(const LaminateRequest& request);
[[nodiscard]] int run_command(const SweepRequest& request);
[[nodiscard]] int run_command(const ValidateRequest& request);

} // namespace plate
