// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "boundary_sampling.h"

#include <plate/meshes/mesher.h>

#include <vector>

namespace plate
{

/// Places of triangles that are inside out, each with its longest edge as reach.
[[nodiscard]] std::vector<FinerPlace> inside_out_places(const PlanformMesh& mesh);

/// Makes sure that a mesh covers the plate: every node used, as many boundary loops as curves, no triangle inside out,
/// the area that of the curves.
///
/// @throws NumericalFailure with what is wrong and where
void check_mesh(const PlanformMesh& mesh, const PlateGeometry& geometry);

} // namespace plate
