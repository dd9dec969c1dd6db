// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>

namespace plate
{

/// A start vector of a Lanczos process without symmetry, so that no mode is missed; the same on every run.
[[nodiscard]] Eigen::VectorXd start_vector(Eigen::Index size);

} // namespace plate
