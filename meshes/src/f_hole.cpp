// SPDX-License-Identifier: MPL-2.0
#include "f_hole.h"

namespace plate
{
FHole f_hole_with_defaults(const FHole& hole, const Outline&) { return hole; }
CurveLoop f_hole_loop(const FHole&) { return {}; }
}
