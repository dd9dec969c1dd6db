// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "eigenproblem.h"

namespace plate::benchmarks
{

/// Lowest elastic modes by ARPACK: shift-invert through its reverse communication, on a factor of ours.
///
/// @throws NumericalFailure  with ARPACK's status if it does not converge
[[nodiscard]] EigenPairs arpack_modes(const Eigenproblem& problem, const SparseCholesky& factor,
                                      const EigenSettings& settings);

} // namespace plate::benchmarks
