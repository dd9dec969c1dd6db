// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "corner_mesh.h"

namespace plate
{

/// Fills the region inside the strips and around the bar with triangles that have the wanted lines as edges; adds free
/// nodes and triangles to the mesh.
///
/// @param size  edge length wanted inside [m]; near the given edges theirs is kept
/// @throws NumericalFailure if the mesher gives up
void fill(CornerMesh& mesh, double size);

} // namespace plate
