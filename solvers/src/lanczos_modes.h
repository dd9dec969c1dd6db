// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/solvers/modal.h>

namespace plate
{

/// @throws InvalidInput if the options ask for none, or for more modes than there are unknowns to carry them
void check_modal_options(const System& system, const ModalOptions& options);

/// A negative shift of the size of the lowest eigenvalues [1/s2].
[[nodiscard]] double modal_shift(const System& system);

/// Lowest elastic modes by the Lanczos process on the factor of K - modal_shift() M, see ModalSolver::solve(). Of the
/// system K, M, the rigid motions and the typical frequency count.
[[nodiscard]] ModalResult lanczos_modes(const System& system, const SparseCholesky& factor,
                                        const ModalOptions& options);

} // namespace plate
