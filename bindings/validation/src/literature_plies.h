// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/laminates/laminate.h>

namespace plate::validation
{

/// Ply of the exact solutions for plates in bending: E1 = 25 E2, G12 = G13 = 0.5 E2, G23 = 0.2 E2, nu 0.25; E2 = 1 GPa
/// [Pagano1970].
[[nodiscard]] Material pagano_ply();

/// Sandwich of the same source: faces of a tenth of the thickness, of that ply.
[[nodiscard]] Laminate pagano_sandwich(double thickness);

} // namespace plate::validation
