// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "knock_down.h"
#include "shared_cases.h"

#include <plate/assembly/model.h>
#include <plate/laminates/failure.h>
#include <plate/solvers/statics.h>

#include <Eigen/Core>
#include <nlohmann/json.hpp>

#include <span>
#include <vector>

namespace plate
{

/// What the results of plates and bodies under load have in common.
using Json = nlohmann::ordered_json;

[[nodiscard]] Json finite(double value); ///< null for what has no limit
[[nodiscard]] Json numbers(const Eigen::VectorXd& values);
[[nodiscard]] Json place_json(const Eigen::Vector2d& at);                   ///< in mm
[[nodiscard]] Json stress_json(const MaterialComponents& stress);           ///< in MPa
[[nodiscard]] Json factors_json(const std::vector<AppliedFactor>& factors); ///< name and factor of each
[[nodiscard]] Json strengths_json(std::span<const Model* const> models);
[[nodiscard]] Json knock_downs_json(const KnockDowns& factors);
[[nodiscard]] Json comparison_json(const std::vector<SharedCase>& cases); ///< ratios of here over the reference

/// Whether residual and balance are rounding: as a limit that is the same on every machine.
[[nodiscard]] bool in_equilibrium(const StaticResult& evidence, double balance_error);

} // namespace plate
