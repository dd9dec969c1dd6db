// SPDX-License-Identifier: MPL-2.0
#include <plate/core/units.h>
#include <plate/meshes/load_picture.h>

#include "contour_labels.h"
#include "map_page.h"

#include <plate/core/error.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace plate
{

namespace
{

constexpr int most_contours = 16;
constexpr double finest_step = 1e-6; // of mm and of %: any load has contours

double range_of(const std::vector<double>& values)
{
  const auto [low, high] = std::minmax_element(values.begin(), values.end());
  return *high - *low;
}

void check_size(const char* function, const std::vector<double>& values, const ShellMesh& mesh)
{
  if (values.size() != mesh.nodes.size() || values.empty())
    throw InvalidInput(message(function, ": the field has ", values.size(), " values, the mesh ", mesh.nodes.size(),
                               " nodes; was it computed on another mesh?"));
}

std::vector<double> scaled(std::vector<double> values, double factor)
{
  for (double& value : values)
    value *= factor;
  return values;
}

void set_contours(MapContent& map)
{
  const double range = range_of(map.values);
  map.step = contour_step(range, finest_step, most_contours);
  map.decimals = decimals_for(map.step);
  map.least_range = std::numeric_limits<double>::min();
}

} // namespace

void write_deflection_map(const std::filesystem::path& path, const PlateView& view, const LoadPicture& picture)
{
  check_size("write_deflection_map", picture.normal_displacement, view.mesh);
  MapContent map{.values = scaled(picture.normal_displacement, millimetres),
                 .headline = "Deflection, mm",
                 .remark = picture.load,
                 .caption = "inward (-) and outward (+), mm",
                 .about_zero = true};
  set_contours(map);
  write_map(path, view, map, displacement_map());
}

void write_strength_map(const std::filesystem::path& path, const PlateView& view, const LoadPicture& picture)
{
  check_size("write_strength_map", picture.strength_used, view.mesh);
  MapContent map{.values = scaled(picture.strength_used, percent),
                 .headline = "Strength used, %",
                 .remark = picture.load,
                 .caption = "share of the strength used, % (100 over the margin)"};
  set_contours(map);
  PlateView marked = view;
  marked.points = {picture.worst};
  write_map(path, marked, map, strength_map());
}

} // namespace plate
