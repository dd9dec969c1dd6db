// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "corner_mesh.h"

namespace plate
{

/// Fills a corner mesh whose boundary, strips and bar have moved with the inside of an older mesh of the same topology.
///
/// The displacement of the given nodes is carried into the inside by a harmonic field on the old triangles, small ones
/// held stiffer, so that strips and bars move nearly rigidly.
/// @param old    planform whose first corner nodes correspond to the nodes of `moved`
/// @param moved  nodes and triangles of boundary, strips and bar; the rest is added
void move_inside(const PlanformMesh& old, CornerMesh& moved);

} // namespace plate
