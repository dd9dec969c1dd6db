// SPDX-License-Identifier: MPL-2.0
#include "contour_labels.h"
#include "contour_spacing.h"
#include "plate_page.h"

#include <plate/core/error.h>
#include <plate/meshes/picture.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace plate
{

namespace
{

constexpr double smallest_range_mm = 0.005; // less than that is drawn as one colour [mm]

/// A nodal field in mm with all that its map says.
struct MapContent
{
  std::vector<double> values_mm; ///< (num_nodes) [mm]
  std::string headline;
  std::string remark;   ///< beneath it
  std::string caption;  ///< under the legend
  double step_mm = 1.0; ///< between contours [mm]
  int index_every = 5;  ///< each so many steps a bold contour
  int decimals = 0;     ///< of labels
};

/// Contour levels, in steps: those inside the range of the field.
struct Levels
{
  int first = 0;
  int last = -1;
};

Levels levels_of(const ContouredField& field, double step_mm)
{
  // A summit or rim that lies on a level but for rounding has no contour.
  const double rounding = 1e-6 * step_mm + 1e-6 * (field.highest() - field.lowest());
  return {.first = static_cast<int>(std::floor((field.lowest() + rounding) / step_mm)) + 1,
          .last = static_cast<int>(std::ceil((field.highest() - rounding) / step_mm)) - 1};
}

/// Place of a value between the least and greatest of a field, 0 to 1.
double part_of_range(const ContouredField& field, double value)
{
  return (value - field.lowest()) / (field.highest() - field.lowest());
}

Colour readable_on(const Colour& colour)
{
  return to_lab(colour).L > 58.0 ? black : white;
}

void draw_contours(Canvas& canvas, const PlateDrawing& drawing, const Frame& frame, const ContouredField& field,
                   const MapContent& map, const ColourMap& colours)
{
  constexpr double least_distance = 2.2; // picture units; contours at a cliff would run into one black line
  // On a plateau at a level the contour would follow the triangles; a hair below, it follows the slope beside it.
  constexpr double below_plateau = 0.02; // of a step
  const Levels levels = levels_of(field, map.step_mm);
  std::vector<std::vector<Polyline>> lines;
  for (int k = levels.first; k <= levels.last; ++k)
    lines.push_back(on_page(frame, field.lines((k - below_plateau) * map.step_mm)));
  lines = without_crowds(lines, least_distance);

  std::vector<LabelledContour> contours;
  for (int k = levels.first; k <= levels.last; ++k)
  {
    const double level = k * map.step_mm;
    const bool is_index = k % map.index_every == 0;
    const Colour ink = readable_on(colours.colour(part_of_range(field, level)));
    contours.push_back({.lines = std::move(lines[static_cast<std::size_t>(k - levels.first)]),
                        .label = label_number(level, map.decimals),
                        .pen = {.colour = ink, .width = is_index ? 1.1 : 0.5},
                        .text_colour = ink,
                        .is_index = is_index});
  }
  std::vector<Polyline> obstacles = on_page(frame, drawing.lines());
  for (Polyline& taken : drawing.taken_by_points(frame, {}))
    obstacles.push_back(std::move(taken));
  draw_labelled_contours(canvas, contours, obstacles);
}

ColourBar colour_bar(const ContouredField& field, const MapContent& map, const ColourMap& colours)
{
  constexpr int most_labels = 9;
  ColourBar bar{.colours = bar_colours(colours), .ticks = {}, .caption = map.caption};
  const Levels levels = levels_of(field, map.step_mm);
  int every = 1;
  for (const int candidate : {1, 2, 5, 10, 20, 50})
  {
    every = candidate;
    if ((levels.last - levels.first) / candidate < most_labels)
      break;
  }
  for (int k = levels.first; k <= levels.last; ++k)
    if (k % every == 0)
      bar.ticks.push_back(
          {.at = part_of_range(field, k * map.step_mm), .label = label_number(k * map.step_mm, map.decimals)});
  return bar;
}

void write_map(const std::filesystem::path& path, const PlateView& view, const MapContent& map,
               const ColourMap& colours)
{
  constexpr double uniform_part = 0.15; // place on the map of a plate all of one value
  const PlateDrawing drawing(view);
  const ContouredField field(drawing.surface(), map.values_mm, Interpolation::within_nodes);
  const double range = field.highest() - field.lowest();
  const bool is_uniform = range < smallest_range_mm;
  PlatePage page{
      .headline = map.headline, .subline = map.remark, .legend = {.bar = {}, .items = drawing.legend_items()}};
  if (!is_uniform)
    page.legend.bar = colour_bar(field, map, colours);
  write_plate_page(path, view, drawing, std::move(page),
                   [&](Canvas& canvas, const Frame& frame)
                   {
                     const double low = is_uniform ? field.lowest() - uniform_part : field.lowest();
                     const double high = is_uniform ? low + 1.0 : field.highest();
                     drawing.fill(canvas, frame, field, colours, low, high);
                     if (!is_uniform)
                       draw_contours(canvas, drawing, frame, field, map, colours);
                     drawing.stroke(canvas, frame, {});
                     drawing.draw_points(canvas, frame, {});
                   });
}

/// A step of 1, 2 or 5 times a power of ten, at least `finest`, that gives at most `most` contours.
double contour_step(double range, double finest, int most)
{
  double step = finest;
  for (int i = 0; range / step > most; ++i)
    step *= i % 3 == 1 ? 2.5 : 2.0; // 1, 2, 5, 10, ...
  return step;
}

} // namespace

void write_thickness_map(const std::filesystem::path& path, const PlateView& view)
{
  if (view.mesh.thickness.size() != view.mesh.nodes.size() || view.mesh.nodes.empty())
    throw InvalidInput(message("write_thickness_map: the mesh has ", view.mesh.thickness.size(), " thicknesses and ",
                               view.mesh.nodes.size(), " nodes; each node needs one"));
  MapContent map{.values_mm = {}, .headline = "Thickness, mm", .remark = {}, .caption = "thickness, mm"};
  for (const double thickness : view.mesh.thickness)
    map.values_mm.push_back(1000.0 * thickness);
  const auto [low, high] = std::minmax_element(map.values_mm.begin(), map.values_mm.end());
  map.step_mm = contour_step(*high - *low, 0.1, 16);
  map.decimals = map.step_mm < 1.0 ? 1 : 0;
  map.remark = *high - *low < smallest_range_mm
                   ? "uniform, " + label_number(*high, 2) + " mm"
                   : "from " + label_number(*low, 2) + " to " + label_number(*high, 2) + " mm";
  write_map(path, view, map, thickness_map());
}

void write_arching_map(const std::filesystem::path& path, const PlateView& view)
{
  if (view.mesh.nodes.empty())
    throw InvalidInput("write_arching_map: the mesh is empty; make a mesh first");
  MapContent map{
      .values_mm = {}, .headline = "Arching height, mm", .remark = {}, .caption = "mid-surface above the rim, mm"};
  for (const Eigen::Vector3d& node : view.mesh.nodes)
    map.values_mm.push_back(1000.0 * node[2]);
  const auto [low, high] = std::minmax_element(map.values_mm.begin(), map.values_mm.end());
  map.step_mm = contour_step(*high - *low, 1.0, 32);
  map.remark = *high - *low < smallest_range_mm ? "flat" : "crown " + label_number(*high, 1) + " mm";
  write_map(path, view, map, height_map());
}

} // namespace plate
