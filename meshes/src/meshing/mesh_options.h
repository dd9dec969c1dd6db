// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/planform_mesh.h>
#include <plate/meshes/plate_geometry.h>

namespace plate
{

/// The options with the default of the size put in.
///
/// @throws InvalidInput if an option is negative or not finite
[[nodiscard]] MeshOptions with_defaults(const MeshOptions& options, const PlateGeometry& geometry);

} // namespace plate
