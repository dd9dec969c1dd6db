// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "boundary_sampling.h"
#include "corner_mesh.h"

namespace plate
{

/// Rows of mesh lines across the bar as the sizes ask.
[[nodiscard]] BarRows place_bar_rows(const BarFootprintShape& bar, const std::vector<BoundarySample>& samples,
                                     double size);

/// Adds nodes and triangles of the strip under the bar, two columns with the centre line between them.
void add_bar(const BarFootprintShape& bar, const BarRows& rows, CornerMesh& mesh);

/// What the solver needs to know of the bar's place, once the mesh is cubic.
[[nodiscard]] BarFootprint bar_footprint(const BarFootprintShape& bar, const PlanformMesh& mesh,
                                         const std::vector<int>& triangles);

} // namespace plate
