// SPDX-License-Identifier: MPL-2.0
#include "map_page.h"

#include "contour_labels.h"
#include "contour_spacing.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace plate
{

namespace
{

/// Contour levels, in steps: those inside the range of the field.
struct Levels
{
  int first = 0;
  int last = -1;
};

Levels levels_of(const FieldRange& field, double step)
{
  // A summit or rim that lies on a level but for rounding has no contour.
  const double rounding = 1e-6 * step + 1e-6 * (field.highest - field.lowest);
  return {.first = static_cast<int>(std::floor((field.lowest + rounding) / step)) + 1,
          .last = static_cast<int>(std::ceil((field.highest - rounding) / step)) - 1};
}

/// Values at the two ends of the colours.
struct ColourRange
{
  double low;
  double high;

  /// Place of a value between them, 0 to 1.
  [[nodiscard]] double part(double value) const { return (value - low) / (high - low); }
};

ColourRange colour_range(const FieldRange& field, const MapContent& map)
{
  if (!map.about_zero)
    return {field.lowest, field.highest};
  const double most = std::max(std::abs(field.lowest), std::abs(field.highest));
  return {-most, most};
}

/// @param zero  lines that labels keep off
void draw_contours(Canvas& canvas, const PlateDrawing& drawing, const Frame& frame, const ContouredField& field,
                   const MapContent& map, const ColourMap& colours, const ColourRange& range,
                   const std::vector<Polyline>& zero)
{
  constexpr double least_distance = 2.2; // picture units; contours at a cliff would run into one black line
  // On a plateau at a level the contour would follow the triangles; a hair below, it follows the slope beside it.
  constexpr double below_plateau = 0.02; // of a step
  const Levels levels = levels_of(range_of(field), map.step);
  std::vector<std::vector<Polyline>> lines;
  for (int k = levels.first; k <= levels.last; ++k)
    lines.push_back(on_page(frame, field.lines((k - below_plateau) * map.step)));
  lines = without_crowds(lines, least_distance);

  std::vector<LabelledContour> contours;
  for (int k = levels.first; k <= levels.last; ++k)
  {
    const double level = k * map.step;
    const bool is_index = k % map.index_every == 0;
    const Colour ink = readable_on(colours.colour(range.part(level)));
    contours.push_back({.lines = std::move(lines[static_cast<std::size_t>(k - levels.first)]),
                        .label = label_number(level, map.decimals),
                        .pen = {.colour = ink, .width = is_index ? 1.1 : 0.5},
                        .text_colour = ink,
                        .is_index = is_index});
  }
  std::vector<Polyline> obstacles = on_page(frame, drawing.lines());
  obstacles.insert(obstacles.end(), zero.begin(), zero.end());
  for (Polyline& taken : drawing.taken_by_points(frame, {}))
    obstacles.push_back(std::move(taken));
  draw_labelled_contours(canvas, contours, obstacles);
}

/// White with a dark line in it: readable on any colour and told from contours.
const std::vector<Pen>& zero_pens()
{
  static const std::vector<Pen> pens = {{.colour = white, .width = 3.2},
                                        {.colour = black, .width = 1.4, .dashes = {5.0, 3.0}}};
  return pens;
}

std::vector<Polyline> zero_lines(const PlateDrawing& drawing, const Frame& frame, const MapContent& map)
{
  if (!map.zero)
    return {};
  const ContouredField field(drawing.surface(), map.zero->values, Interpolation::within_nodes);
  return on_page(frame, field.lines(0.0));
}

} // namespace

FieldRange range_of(const ContouredField& field)
{
  return {.lowest = field.lowest(), .highest = field.highest()};
}

ColourBar colour_bar(const FieldRange& field, const MapContent& map, const ColourMap& colours)
{
  constexpr int most_labels = 9;
  constexpr double least_distance = 0.13; // of the bar; a field on one side of zero has half of it
  const ColourRange range = colour_range(field, map);
  ColourBar bar{.colours = bar_colours(colours), .ticks = {}, .caption = map.caption};
  const Levels levels = levels_of(field, map.step);
  int every = 1;
  for (const int candidate : {1, 2, 5, 10, 20, 50})
  {
    every = candidate;
    const bool has_room = !map.about_zero || candidate * map.step >= least_distance * (range.high - range.low);
    if (has_room && (levels.last - levels.first) / candidate < most_labels)
      break;
  }
  for (int k = levels.first; k <= levels.last; ++k)
    if (k % every == 0)
      bar.ticks.push_back({.at = range.part(k * map.step), .label = label_number(k * map.step, map.decimals)});
  return bar;
}

void draw_map(Canvas& canvas, const PlateDrawing& drawing, const Frame& frame, const ContouredField& field,
              const MapContent& map, const ColourMap& colours, const FieldRange& all)
{
  constexpr double uniform_part = 0.15; // place on the map of a plate all of one value
  const ColourRange range = colour_range(all, map);
  const bool is_uniform = all.highest - all.lowest < map.least_range;
  const double low = is_uniform ? all.lowest - uniform_part : range.low;
  const double high = is_uniform ? low + 1.0 : range.high;
  drawing.fill(canvas, frame, field, colours, low, high);
  const std::vector<Polyline> zero = zero_lines(drawing, frame, map);
  if (!is_uniform)
    draw_contours(canvas, drawing, frame, field, map, colours, range, zero);
  for (const Pen& pen : zero_pens())
    canvas.stroke(zero, pen);
  drawing.stroke(canvas, frame, {});
  drawing.draw_points(canvas, frame, {});
}

void write_map(const std::filesystem::path& path, const PlateView& view, const MapContent& map,
               const ColourMap& colours)
{
  const PlateDrawing drawing(view);
  const ContouredField field(drawing.surface(), map.values, Interpolation::within_nodes);
  const FieldRange range = range_of(field);
  PlatePage page{
      .headline = map.headline, .subline = map.remark, .legend = {.bar = {}, .items = drawing.legend_items()}};
  if (!(range.highest - range.lowest < map.least_range))
    page.legend.bar = colour_bar(range, map, colours);
  if (map.zero)
    page.legend.items.push_back(line_item(zero_pens(), map.zero->words));
  write_plate_page(path, view, drawing, std::move(page),
                   [&](Canvas& canvas, const Frame& frame)
                   { draw_map(canvas, drawing, frame, field, map, colours, range); });
}

double contour_step(double range, double finest, int most)
{
  double step = finest;
  for (int i = 0; range / step > most; ++i)
    step *= i % 3 == 1 ? 2.5 : 2.0; // 1, 2, 5, 10, ...
  return step;
}

int decimals_for(double step)
{
  constexpr double rounding = 1e-6;
  return std::max(0, static_cast<int>(std::ceil(-std::log10(step) - rounding)));
}

} // namespace plate
