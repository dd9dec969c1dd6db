// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/load_picture.h>

#include "load_maps.h"

#include <plate/core/units.h>

#include <algorithm>
#include <utility>

namespace plate
{

namespace
{

/// The values of a plate are all there are.
MapContent on_plate(MapContent map, std::vector<double> values)
{
  map.values = std::move(values);
  const auto [low, high] = std::minmax_element(map.values.begin(), map.values.end());
  set_contours(map, *high - *low);
  return map;
}

} // namespace

void write_deflection_map(const std::filesystem::path& path, const PlateView& view, const LoadPicture& picture)
{
  check_size("write_deflection_map", picture.normal_displacement, view.mesh);
  write_map(path, view, on_plate(deflection_content(picture.load), scaled(picture.normal_displacement, millimetres)),
            displacement_map());
}

void write_strength_map(const std::filesystem::path& path, const PlateView& view, const LoadPicture& picture)
{
  check_size("write_strength_map", picture.strength_used, view.mesh);
  PlateView marked = view;
  marked.points = {picture.worst};
  write_map(path, marked, on_plate(strength_content(picture.load), scaled(picture.strength_used, percent)),
            strength_map());
}

} // namespace plate
