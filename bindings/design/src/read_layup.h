// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "point_parts.h"
#include "read_materials.h"
#include "table_reader.h"

#include <plate/laminates/laminate.h>

namespace plate
{

class PointFiles;

/// Reads [layup]: the plies with layup.scale and layup.scale_core applied.
///
/// A solid plate is one ply; its thickness here is that of the thickness key "value" or "centre", scaled.
/// @param root  table of the whole file
[[nodiscard]] Laminate read_layup(const TableReader& root, const MaterialStock& stock, PointFiles& files);

/// Reads the list `plies` of a table.
[[nodiscard]] Laminate read_ply_list(const TableReader& owner, const MaterialStock& stock);

/// Reads the directions of the plies that have an angle file; each such ply must be laid and give no angle.
[[nodiscard]] std::vector<PlyDirectionField> read_directions(const TableReader& root, const Outline& outline,
                                                             PointParts& parts);

/// Whether the plate is solid, so that [thickness] gives its thickness.
[[nodiscard]] bool is_solid(const TableReader& root);

} // namespace plate
