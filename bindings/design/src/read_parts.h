// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "read_materials.h"
#include "table_reader.h"

#include <plate/assembly/model.h>
#include <plate/meshes/plate_geometry.h>

#include <vector>

namespace plate
{

/// Reads the patches; each must lie on the plate, at least in part.
///
/// @param root  table of the whole file
[[nodiscard]] std::vector<Patch> read_patches(const TableReader& root, const MaterialStock& stock,
                                              const PlateGeometry& geometry);

/// Reads the masses stuck on the plate; each must lie on it.
[[nodiscard]] std::vector<PointMass> read_masses(const TableReader& root, const PlateGeometry& geometry);

} // namespace plate
