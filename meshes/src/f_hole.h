// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/soundhole.h>

namespace plate
{

/// Boundary of an f-hole on the side y > 0, clockwise; every measure must be set.
[[nodiscard]] CurveLoop f_hole_loop(const FHole& hole);

} // namespace plate
