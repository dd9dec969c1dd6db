// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/mesher.h>

namespace plate
{

/// Makes sure that a mesh covers the plate: every node used, as many boundary loops as curves, no triangle inside out,
/// the area that of the curves.
///
/// @throws NumericalFailure with what is wrong and where
void check_mesh(const PlanformMesh& mesh, const PlateGeometry& geometry);

} // namespace plate
