// SPDX-License-Identifier: MPL-2.0
#pragma once

namespace plate
{

/// Memory that assembling and solving for modes takes at its greatest: matrices, factorisation and Lanczos vectors.
///
/// Fitted to peaks measured on carved and laminated tops from 6 000 to 900 000 unknowns, with 12 and 60 modes, factorised
/// by CHOLMOD: within a fifth of all of them. Nested dissection fills in n log n numbers on a plane mesh [George1973].
/// @param num_modes  elastic modes wanted
/// @return [bytes]
[[nodiscard]] double modal_memory(double num_unknowns, int num_modes);

} // namespace plate
