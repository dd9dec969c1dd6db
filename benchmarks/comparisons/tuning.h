// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "eigenproblem.h"

#include <functional>

namespace plate::benchmarks
{

/// Any eigensolver, factorisation included.
using Eigensolver = std::function<EigenPairs(const Eigenproblem&, const EigenSettings&)>;

/// The settings at which a solver is fastest among usual sizes of the Krylov space, with rigid motions taken out
/// beforehand or not: each solver is to be compared at its best.
[[nodiscard]] EigenSettings fastest_settings(const Eigensolver& solver, const Eigenproblem& problem);

/// The loosest tolerance, by powers of ten, with which the residuals are no greater than `largest`; what solvers mean
/// by tolerance differs, the residual of what they return does not.
[[nodiscard]] double loosest_tolerance(const Eigensolver& solver, const Eigenproblem& problem, EigenSettings settings,
                                       double largest);

} // namespace plate::benchmarks
