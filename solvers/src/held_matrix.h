// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/assemble.h>

namespace plate
{

/// K with springs at as many single unknowns as a plate has rigid motions, as stiff as the plate is there: positive
/// definite, and without force in the springs under a load in equilibrium. Lower triangle.
[[nodiscard]] SparseMatrix held_matrix(const System& system);

} // namespace plate
