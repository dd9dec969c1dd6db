// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "boundary_sampling.h"
#include "corner_mesh.h"

#include <plate/mesh/planform_region.h>

#include <vector>

namespace plate
{

/// Lays mesh lines along the edges of regions whose sections differ, so that their jump falls between triangles.
///
/// Adds nodes and CornerMesh::lines. Where an edge comes close to the strips, the bar or the edge of an earlier region
/// it is left out: there triangles are cut, and integrated in parts.
///
/// @param mesh  with the strips and the bar
/// @param size  edge length inside the plate [m]
void add_region_lines(const std::vector<PlanformRegion>& regions, const std::vector<BoundarySample>& samples,
                      double size, CornerMesh& mesh);

} // namespace plate
