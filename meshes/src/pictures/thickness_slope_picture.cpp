// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/thickness_slope_picture.h>

#include "contour_labels.h"
#include "map_page.h"

#include <plate/core/error.h>

#include <algorithm>
#include <limits>

namespace plate
{

namespace
{

constexpr double hz_per_mm_cm2 = 1e-7; // in Hz/(m m2)
constexpr double hz_per_mm = 1e-3;     // in Hz/m
constexpr int most_contours = 16;
constexpr double finest_step = 1e-6; // [Hz/(mm cm2)]

std::vector<double> shown(const std::vector<double>& slopes, const ShellMesh& mesh)
{
  if (slopes.size() != mesh.nodes.size() || slopes.empty())
    throw InvalidInput(message("write_thickness_slope_map: the field has ", slopes.size(), " values, the mesh ",
                               mesh.nodes.size(), " nodes; was it computed on another mesh?"));
  std::vector<double> values = slopes;
  for (double& value : values)
    value *= hz_per_mm_cm2;
  return values;
}

} // namespace

void write_thickness_slope_map(const std::filesystem::path& path, const PlateView& view,
                               const ThicknessSlopePicture& picture)
{
  MapContent map{.values = shown(picture.slopes, view.mesh),
                 .headline = "What thickness does, Hz per mm and cm²",
                 .remark = message(picture.label, "; the whole plate ", picture.whole < 0.0 ? "" : "+",
                                   label_number(picture.whole * hz_per_mm, 1), " Hz per mm"),
                 .caption = "frequency lower (-) and higher (+) by thickness added here, Hz per mm and cm²",
                 .least_range = std::numeric_limits<double>::min(),
                 .about_zero = true};
  if (picture.unmoved)
    map.zero = ZeroLines{.values = shown(picture.unmoved->slopes, view.mesh),
                         .words = "thickness here leaves " + picture.unmoved->label + " alone"};
  const auto [low, high] = std::minmax_element(map.values.begin(), map.values.end());
  map.step = contour_step(*high - *low, finest_step, most_contours);
  map.decimals = decimals_for(map.step);
  write_map(path, view, map, displacement_map());
}

} // namespace plate
