// SPDX-License-Identifier: MPL-2.0
#include "contour_labels.h"
#include "plate_drawing.h"

#include <plate/core/error.h>
#include <plate/meshes/picture.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace plate
{

namespace
{

/// A nodal field in mm with all that its map says.
struct MapContent
{
  std::vector<double> values_mm; ///< (num_nodes) [mm]
  std::string heading;
  std::string caption;              ///< under the legend
  double step_mm = 1.0;             ///< between contours [mm]
  int index_every = 5;              ///< each so many steps a bold contour
  int decimals = 0;                 ///< of labels
  double smallest_range_mm = 0.005; ///< less than that is drawn as one colour [mm]
};

/// Contour levels and the limits of the bands between them, all in steps.
struct Levels
{
  int lowest = 0;  ///< lower limit of the lowest band
  int highest = 0; ///< upper limit of the highest band

  [[nodiscard]] int num_bands() const { return highest - lowest; }
};

Levels levels_of(const ContouredField& field, double step_mm)
{
  // A summit or rim that lies on a level but for rounding opens no band of its own.
  const double rounding = 1e-6 * step_mm + 1e-6 * (field.highest() - field.lowest());
  const int lowest = static_cast<int>(std::floor((field.lowest() + rounding) / step_mm));
  const int highest = static_cast<int>(std::ceil((field.highest() - rounding) / step_mm));
  return {.lowest = lowest, .highest = std::max(highest, lowest + 1)};
}

Colour readable_on(const Colour& colour)
{
  return to_lab(colour).L > 58.0 ? black : white;
}

void draw_varying(Canvas& canvas, const PlateDrawing& drawing, const Frame& frame, const ContouredField& field,
                  const MapContent& map, const Levels& levels, const std::vector<Colour>& colours)
{
  std::vector<double> inner_levels;
  std::vector<LabelledContour> contours;
  for (int k = levels.lowest + 1; k < levels.highest; ++k)
  {
    const double level = k * map.step_mm;
    const bool is_index = k % map.index_every == 0;
    const Colour ink = readable_on(colours[static_cast<std::size_t>(k - levels.lowest)]);
    inner_levels.push_back(level);
    contours.push_back({.lines = on_page(frame, field.lines(level)),
                        .label = label_number(level, map.decimals),
                        .pen = {.colour = ink, .width = is_index ? 1.1 : 0.5},
                        .text_colour = ink,
                        .is_index = is_index});
  }
  drawing.fill_bands(canvas, frame, field, inner_levels, colours);
  draw_labelled_contours(canvas, contours, on_page(frame, boundary_lines(drawing.surface())));
}

ColourBar legend(const MapContent& map, const Levels& levels, const std::vector<Colour>& colours)
{
  constexpr int most_labels = 9;
  ColourBar bar{.colours = colours, .ticks = {}, .caption = map.caption};
  int every = 1;
  for (const int candidate : {1, 2, 5, 10, 20, 50})
  {
    every = candidate;
    if (levels.num_bands() / candidate < most_labels)
      break;
  }
  for (int k = levels.lowest; k <= levels.highest; ++k)
    if (k % every == 0)
      bar.ticks.push_back({.at = static_cast<double>(k - levels.lowest) / levels.num_bands(),
                           .label = label_number(k * map.step_mm, map.decimals)});
  return bar;
}

void write_map(const std::filesystem::path& path, const PlateView& view, const MapContent& map,
               const ColourMap& colours)
{
  const PlateDrawing drawing(view);
  const ContouredField field(drawing.surface(), map.values_mm, Interpolation::within_nodes);
  constexpr double top = 68.0;
  const double scale = std::min(430.0 / drawing.body_length(), 420.0 / drawing.body_width());
  const Eigen::Vector2d size = scale * Eigen::Vector2d(drawing.body_width(), drawing.body_length());
  const double width = std::max(size[0] + 52.0, 320.0);
  Canvas canvas(path, {width, top + size[1] + 92.0});

  canvas.text({0.5 * width, 14.0}, view.title, {.size = 9.5, .colour = grey, .align = Align::centre});
  canvas.text({0.5 * width, 34.0}, map.heading, {.size = 16.0, .bold = true, .align = Align::centre});
  const Frame frame = drawing.fit({0.5 * (width - size[0]), top}, size);
  draw_directions(canvas, view, frame, size[0], size[1]);

  const double below = top + size[1] + 18.0;
  if (field.highest() - field.lowest() < map.smallest_range_mm)
  {
    drawing.fill_bands(canvas, frame, field, {}, std::vector<Colour>{colours.colour(0.15)});
    canvas.text({0.5 * width, below + 8.0}, map.caption, {.size = 10.5, .align = Align::centre});
  }
  else
  {
    const Levels levels = levels_of(field, map.step_mm);
    std::vector<Colour> band_colours;
    for (int k = 0; k < levels.num_bands(); ++k)
      band_colours.push_back(colours.colour((k + 0.5) / levels.num_bands()));
    draw_varying(canvas, drawing, frame, field, map, levels, band_colours);
    draw_colour_bar(canvas, legend(map, levels, band_colours), {0.5 * width - 120.0, below}, 240.0);
  }
  drawing.stroke_bars(canvas, frame, 0.84);
  drawing.stroke_edges(canvas, frame, 1.2);
  const double scale_left = 0.5 * width - (drawing.has_bars() ? 105.0 : 45.0);
  draw_scale_bar(canvas, frame, {scale_left, below + 54.0});
  draw_bar_key(canvas, drawing, {0.5 * width + 25.0, below + 54.0});
  canvas.write();
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
  MapContent map{.values_mm = {}, .heading = "Thickness, mm", .caption = {}};
  for (const double thickness : view.mesh.thickness)
    map.values_mm.push_back(1000.0 * thickness);
  const auto [low, high] = std::minmax_element(map.values_mm.begin(), map.values_mm.end());
  map.step_mm = contour_step(*high - *low, 0.1, 16);
  map.index_every = 5;
  map.decimals = map.step_mm < 1.0 ? 1 : 0;
  map.caption = *high - *low < map.smallest_range_mm
                    ? "uniform, " + label_number(*high, 2) + " mm"
                    : "thickness in mm, from " + label_number(*low, 2) + " to " + label_number(*high, 2);
  write_map(path, view, map, thickness_map());
}

void write_arching_map(const std::filesystem::path& path, const PlateView& view)
{
  if (view.mesh.nodes.empty())
    throw InvalidInput("write_arching_map: the mesh is empty; make a mesh first");
  MapContent map{.values_mm = {}, .heading = "Arching height, mm", .caption = {}};
  for (const Eigen::Vector3d& node : view.mesh.nodes)
    map.values_mm.push_back(1000.0 * node[2]);
  const auto [low, high] = std::minmax_element(map.values_mm.begin(), map.values_mm.end());
  map.step_mm = contour_step(*high - *low, 1.0, 32);
  map.caption =
      *high - *low < map.smallest_range_mm ? "flat" : "mid-surface above the rim, mm; crown " + label_number(*high, 1);
  write_map(path, view, map, height_map());
}

} // namespace plate
