// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/thickness_slope_picture.h>

#include "contour_labels.h"
#include "map_page.h"

#include <plate/core/error.h>
#include <plate/post/surface_integral.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numeric>

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

/// The magnitude that all but a part of the plate stays below: at eyes of holes and ends of bars a few square
/// millimetres count ten times as much as the rest, which would be left without colours.
double usual_limit(const std::vector<double>& values, const ShellMesh& mesh)
{
  constexpr double part_beyond = 0.03; // of the area
  const Eigen::VectorXd areas = nodal_areas(mesh);
  std::vector<std::size_t> order(values.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return std::abs(values[a]) > std::abs(values[b]); });
  double beyond = 0.0;
  for (const std::size_t node : order)
    if (beyond += areas(static_cast<Eigen::Index>(node)); beyond > part_beyond * areas.sum())
      return std::abs(values[node]);
  return 0.0;
}

/// Two digits.
std::string short_number(double value)
{
  return label_number(value,
                      decimals_for(std::pow(10.0, std::floor(std::log10(std::max(std::abs(value), 1e-6))) - 1.0)));
}

/// The values kept within the limit, and what that leaves unsaid.
void limit_values(MapContent& map, double limit)
{
  const auto [low, high] = std::minmax_element(map.values.begin(), map.values.end());
  if (-*low > limit || *high > limit)
    map.caption += message("; full colour beyond ±", short_number(limit), ", to ", short_number(*low), " and ",
                           short_number(*high));
  for (double& value : map.values)
    value = std::clamp(value, -limit, limit);
}

} // namespace

void write_thickness_slope_map(const std::filesystem::path& path, const PlateView& view,
                               const ThicknessSlopePicture& picture)
{
  MapContent map{.values = shown(picture.slopes, view.mesh),
                 .headline = "Thickness, Hz per mm and cm²",
                 .remark = message(picture.label, "; the whole plate ", picture.whole < 0.0 ? "" : "+",
                                   label_number(picture.whole * hz_per_mm, 1), " Hz per mm"),
                 .caption = "Hz per mm on each cm²",
                 .least_range = std::numeric_limits<double>::min(),
                 .about_zero = true};
  if (picture.unmoved)
    map.zero = ZeroLines{.values = shown(picture.unmoved->slopes, view.mesh),
                         .words = "thickness here leaves " + picture.unmoved->label + " alone"};
  limit_values(map, usual_limit(map.values, view.mesh));
  const auto [low, high] = std::minmax_element(map.values.begin(), map.values.end());
  map.step = contour_step(*high - *low, finest_step, most_contours);
  map.decimals = decimals_for(map.step);
  write_map(path, view, map, displacement_map());
}

} // namespace plate
