// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "eigenproblem.h"

namespace plate::benchmarks
{

/// Who factorises for SLEPc.
enum class SlepcFactor
{
  ours,    ///< our factor, as a preconditioner that solves exactly
  cholmod, ///< PETSc's interface to it, with its defaults
  mumps    ///< PETSc's interface to it, with its defaults
};

/// Lowest elastic modes by SLEPc: Krylov-Schur with shift-invert, everything from its matrices on, factorisation
/// included.
///
/// @throws NumericalFailure  if it does not converge
[[nodiscard]] EigenPairs slepc_modes(const Eigenproblem& problem, SlepcFactor factor, const EigenSettings& settings);

} // namespace plate::benchmarks
