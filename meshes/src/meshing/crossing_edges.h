// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "boundary_sampling.h"
#include "corner_mesh.h"

#include <vector>

namespace plate
{

/// Places where the polygons that bound the part left to fill meet each other or themselves; Gmsh 4.8 ends the process
/// on them. Long edges across a bend do it: halved, they keep clear.
[[nodiscard]] std::vector<FinerPlace> crossing_edges(const CornerMesh& mesh);

} // namespace plate
