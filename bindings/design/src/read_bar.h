// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "read_materials.h"
#include "table_reader.h"

#include <plate/elements/bar.h>
#include <plate/meshes/bar_line.h>

namespace plate
{

/// Reads material and height of the bass bar.
///
/// @param table      [bar]
/// @param footprint  its place; its apex is where the bar is highest
[[nodiscard]] Bar read_bar(const TableReader& table, const MaterialStock& stock, const BarFootprintShape& footprint);

/// Height along a bar whose highest point lies at the station `apex`, its ends at -half_length and half_length [m].
///
/// straight: from the apex to both ends; rounded: a hyperbola under the bridge that runs into the same ends.
[[nodiscard]] BarProfile straight_profile(double half_length, double apex, double height, double end_height);
[[nodiscard]] BarProfile rounded_profile(double half_length, double apex, double height, double end_height);

} // namespace plate
