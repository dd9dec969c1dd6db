// SPDX-License-Identifier: MPL-2.0
#include "contour_labels.h"
#include "map_page.h"

#include <plate/core/error.h>
#include <plate/meshes/picture.h>

#include <algorithm>

namespace plate
{

namespace
{

constexpr double smallest_range_mm = 0.005; // less than that is drawn as one colour [mm]

} // namespace

void write_thickness_map(const std::filesystem::path& path, const PlateView& view)
{
  if (view.mesh.thickness.size() != view.mesh.nodes.size() || view.mesh.nodes.empty())
    throw InvalidInput(message("write_thickness_map: the mesh has ", view.mesh.thickness.size(), " thicknesses and ",
                               view.mesh.nodes.size(), " nodes; each node needs one"));
  MapContent map{.values = {},
                 .headline = "Thickness, mm",
                 .remark = {},
                 .caption = "thickness, mm",
                 .least_range = smallest_range_mm};
  for (const double thickness : view.mesh.thickness)
    map.values.push_back(1000.0 * thickness);
  const auto [low, high] = std::minmax_element(map.values.begin(), map.values.end());
  map.step = contour_step(*high - *low, 0.1, 16);
  map.decimals = decimals_for(map.step);
  map.remark = *high - *low < smallest_range_mm
                   ? "uniform, " + label_number(*high, 2) + " mm"
                   : "from " + label_number(*low, 2) + " to " + label_number(*high, 2) + " mm";
  write_map(path, view, map, thickness_map());
}

void write_arching_map(const std::filesystem::path& path, const PlateView& view)
{
  if (view.mesh.nodes.empty())
    throw InvalidInput("write_arching_map: the mesh is empty; make a mesh first");
  MapContent map{.values = {},
                 .headline = "Arching height, mm",
                 .remark = {},
                 .caption = "mid-surface above the rim, mm",
                 .least_range = smallest_range_mm};
  for (const Eigen::Vector3d& node : view.mesh.nodes)
    map.values.push_back(1000.0 * node[2]);
  const auto [low, high] = std::minmax_element(map.values.begin(), map.values.end());
  map.step = contour_step(*high - *low, 1.0, 32);
  map.remark = *high - *low < smallest_range_mm ? "flat" : "crown " + label_number(*high, 1) + " mm";
  write_map(path, view, map, height_map());
}

} // namespace plate
