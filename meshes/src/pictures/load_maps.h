// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "map_page.h"

#include <string>
#include <vector>

namespace plate
{

/// What maps of deflection and of strength used say, values and contours left open.
[[nodiscard]] MapContent deflection_content(const std::string& load);
[[nodiscard]] MapContent strength_content(const std::string& load);

/// Contours for values over a range: any load has some.
void set_contours(MapContent& map, double range);

[[nodiscard]] std::vector<double> scaled(std::vector<double> values, double factor);

/// @throws InvalidInput if there is not one value for each node
void check_size(const char* function, const std::vector<double>& values, const ShellMesh& mesh);

} // namespace plate
