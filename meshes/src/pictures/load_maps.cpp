// SPDX-License-Identifier: MPL-2.0
#include "load_maps.h"

#include <plate/core/error.h>

#include <limits>

namespace plate
{

MapContent deflection_content(const std::string& load)
{
  return {.values = {},
          .headline = "Deflection, mm",
          .remark = load,
          .caption = "inward (-) and outward (+), mm",
          .about_zero = true};
}

MapContent strength_content(const std::string& load)
{
  return {.values = {},
          .headline = "Strength used, %",
          .remark = load,
          .caption = "share of the strength used, % (100 over the margin)"};
}

void set_contours(MapContent& map, double range)
{
  constexpr int most_contours = 16;
  constexpr double finest_step = 1e-6; // of mm and of %
  map.step = contour_step(range, finest_step, most_contours);
  map.decimals = decimals_for(map.step);
  map.least_range = std::numeric_limits<double>::min();
}

std::vector<double> scaled(std::vector<double> values, double factor)
{
  for (double& value : values)
    value *= factor;
  return values;
}

void check_size(const char* function, const std::vector<double>& values, const ShellMesh& mesh)
{
  if (values.size() != mesh.nodes.size() || values.empty())
    throw InvalidInput(message(function, ": the field has ", values.size(), " values, the mesh ", mesh.nodes.size(),
                               " nodes; was it computed on another mesh?"));
}

} // namespace plate
