// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "read_materials.h"
#include "table_reader.h"

#include <plate/design/design.h>
#include <plate/design/load_design.h>

namespace plate
{

/// Reads [strings], [soundpost], [handling] and [knock_down] of a plate.
///
/// @throws DesignError if a force or the post has no place on the plate
[[nodiscard]] LoadDesign read_load(const TableReader& root, const MaterialStock& stock, const Design& design);

/// Reads the height of the bridge, [handling] and [knock_down] of a body with that top.
///
/// @throws DesignError if a force has no place on the top
[[nodiscard]] BodyLoadDesign read_body_load(const TableReader& root, const Design& top);

/// Reads [strings] over a top.
[[nodiscard]] Strings read_strings(const TableReader& root, const Design& design);

} // namespace plate
