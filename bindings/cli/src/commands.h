// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "command_line.h"
#include "run_guarded.h"

namespace plate
{

/// Each runs one command, prints its results on standard output and returns the exit status.
[[nodiscard]] int run_command(const TextRequest& request);
[[nodiscard]] int run_command(const StartRequest& request);
[[nodiscard]] int run_command(const ModesRequest& request);
[[nodiscard]] int run_command(const LaminateRequest& request);
[[nodiscard]] int run_command(const CompareRequest& request);
[[nodiscard]] int run_command(const SweepRequest& request);
[[nodiscard]] int run_command(const SensitivityRequest& request);
[[nodiscard]] int run_command(const LoadRequest& request);
[[nodiscard]] int run_command(const MatchRequest& request);
[[nodiscard]] int run_command(const BodyRequest& request);
[[nodiscard]] int run_command(const ValidateRequest& request);

} // namespace plate
