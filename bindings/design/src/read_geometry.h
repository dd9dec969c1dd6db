// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "point_parts.h"
#include "table_reader.h"

#include <plate/design/design.h>

namespace plate
{

/// Reads [outline].
[[nodiscard]] Outline read_outline(const TableReader& root, PointParts& parts);

/// Reads [setup]; the bridge line must lie inside the plate.
[[nodiscard]] Setup read_setup(const TableReader& root, const Outline& outline);

/// Reads [thickness] of a solid plate, layup.scale applied.
[[nodiscard]] ThicknessMap read_thickness(const TableReader& root, const Outline& outline, PointParts& parts);

/// Reads the place of the bar; its highest point is where its axis meets the bridge line.
[[nodiscard]] BarFootprintShape read_bar_footprint(const TableReader& bar, double bridge_x);

/// Reads the shape of a plate and checks that it can be made.
///
/// @param root  table of the whole file
/// @throws DesignError at the table that does not fit: outline, arching, thickness, one soundhole or the bar
[[nodiscard]] PlateGeometry read_geometry(const TableReader& root, const Outline& outline, const Setup& setup,
                                          const ThicknessMap& thickness, PointParts& parts);

} // namespace plate
