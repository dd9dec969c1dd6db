// SPDX-License-Identifier: MPL-2.0
#include "mode_drawing.h"

#include "antinodes.h"

#include <plate/core/error.h>
#include <plate/core/units.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace plate
{

namespace
{

constexpr std::array<double, 8> contour_levels = {-0.8, -0.6, -0.4, -0.2, 0.2, 0.4, 0.6, 0.8};

void draw_contours(Canvas& canvas, const Frame& frame, const ContouredField& field, double width)
{
  std::vector<Polyline> contours;
  for (const double level : contour_levels)
    for (Polyline& line : on_page(frame, field.lines(level)))
      contours.push_back(std::move(line));
  canvas.stroke(contours, {.width = width});
}

/// Plus or minus as strokes, black in a white rim, so that it reads on every band and in grey.
void draw_sign(Canvas& canvas, const Eigen::Vector2d& centre, double half_width, bool positive)
{
  const Eigen::Vector2d along(half_width, 0.0);
  const Eigen::Vector2d upright(0.0, half_width);
  for (const Pen& pen :
       {Pen{.colour = white, .width = 0.85 * half_width}, Pen{.colour = black, .width = 0.36 * half_width}})
  {
    canvas.line(centre - along, centre + along, pen);
    if (positive)
      canvas.line(centre - upright, centre + upright, pen);
  }
}

/// Points along what marked points cover, close enough to keep a sign away [m].
std::vector<Eigen::Vector2d> taken_places(const PlateDrawing& drawing, const Frame& frame, const ModeStyle& style)
{
  std::vector<Eigen::Vector2d> places;
  for (const Polyline& box : drawing.taken_by_points(frame, style.plate))
    for (const Eigen::Vector2d& point : walked(box, 0.5 * style.sign_half_width))
      places.push_back(frame.on_plate(point));
  return places;
}

} // namespace

std::vector<double> picture_shape(const ShellMesh& mesh, std::span<const double> normal_displacement)
{
  constexpr double tie = 1e-6;
  constexpr double rounding = 1e-9;
  if (normal_displacement.size() != mesh.nodes.size())
    throw InvalidInput(message("picture: the mode shape has ", normal_displacement.size(), " values, the mesh ",
                               mesh.nodes.size(), " nodes; was it computed on another mesh?"));
  double largest = 0.0;
  for (const double value : normal_displacement)
  {
    if (!std::isfinite(value))
      throw InvalidInput(message("picture: the mode shape has the value ", value, "; all values must be finite"));
    largest = std::max(largest, std::abs(value));
  }
  if (!(largest > 0.0))
    throw InvalidInput("picture: the mode shape has no normal displacement at all; is it a mode of the plate?");
  const auto first = std::find_if(normal_displacement.begin(), normal_displacement.end(),
                                  [&](double value) { return std::abs(value) >= (1.0 - tie) * largest; });
  const double factor = (*first < 0.0 ? -1.0 : 1.0) / largest;
  std::vector<double> shape;
  for (const double value : normal_displacement)
    shape.push_back(std::abs(value) < rounding * largest ? 0.0 : factor * value);
  return shape;
}

ModeStyle style_for_height(double height)
{
  constexpr double least_for_contours = 100.0; // smaller plates would be all lines
  const double part = std::clamp(height / 420.0, 0.15, 1.0);
  return {.plate = {.edge_width = 0.5 + 0.7 * part,
                    .fine_width = 0.35 + 0.5 * part,
                    .point_radius = 1.2 + 2.3 * part,
                    .label_points = part == 1.0},
          .contour_width = height < least_for_contours ? 0.0 : 0.2 + 0.2 * part,
          .nodal_width = 0.8 + 1.6 * part,
          .sign_half_width = 1.8 + 4.7 * part};
}

void draw_mode(Canvas& canvas, const PlateDrawing& drawing, const Frame& frame, std::span<const double> shape,
               const ModeStyle& style)
{
  const ContouredField field(drawing.surface(), shape);
  drawing.fill(canvas, frame, field, displacement_map(), -1.0, 1.0);
  if (style.contour_width > 0.0)
    draw_contours(canvas, frame, field, style.contour_width);
  canvas.stroke(on_page(frame, field.lines(0.0)), {.width = style.nodal_width});
  drawing.stroke(canvas, frame, style.plate);
  const std::vector<Eigen::Vector2d> taken = taken_places(drawing, frame, style);
  for (const Antinode& antinode : find_antinodes(field, style.sign_half_width / frame.scale, taken))
    draw_sign(canvas, frame.on_page(antinode.position), style.sign_half_width, antinode.value >= 0.0);
  drawing.draw_points(canvas, frame, style.plate);
}

Legend mode_legend(const PlateDrawing& drawing, const ModeStyle& style)
{
  Legend legend{.bar =
                    ColourBar{.colours = bar_colours(displacement_map()),
                              .ticks = {{0.0, "\u22121"}, {0.5, "0"}, {1.0, "+1"}},
                              .caption = "movement inward (\u2212) and outward (+), largest = 1, a line at each fifth"},
                .items = {line_item({{.width = ModeStyle().nodal_width}}, "nodal line")}};
  legend.add(drawing.legend_items(style.plate));
  return legend;
}

std::string hertz(double frequency_hz)
{
  return label_number(frequency_hz, 1) + " Hz";
}

std::string loss_words(const ModeShapePicture& mode)
{
  return mode.loss ? "loss " + label_number(percent * *mode.loss, 2) + " %" : "";
}

std::string mode_words(const ModeShapePicture& mode)
{
  return std::to_string(mode.number) + (mode.name.empty() ? "" : " \u00b7 " + trade_name(mode.name));
}

} // namespace plate
