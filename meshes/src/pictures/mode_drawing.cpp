// SPDX-License-Identifier: MPL-2.0
#include "mode_drawing.h"

#include "antinodes.h"

#include <plate/core/error.h>

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

constexpr int num_bands = 20; // a tenth of the largest displacement each

std::vector<double> band_levels()
{
  std::vector<double> levels;
  for (int k = 1; k < num_bands; ++k)
    levels.push_back(static_cast<double>(2 * k - num_bands) / num_bands);
  return levels;
}

std::vector<Colour> band_colours()
{
  std::vector<Colour> colours;
  for (int k = 0; k < num_bands; ++k)
    colours.push_back(displacement_map().colour((k + 0.5) / num_bands));
  return colours;
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
  const double part = std::clamp(height / 420.0, 0.15, 1.0);
  return {.edge_width = 0.5 + 0.7 * part, .nodal_width = 0.8 + 1.6 * part, .sign_half_width = 1.8 + 4.7 * part};
}

void draw_mode(Canvas& canvas, const PlateDrawing& drawing, const Frame& frame, std::span<const double> shape,
               const ModeStyle& style)
{
  const ContouredField field(drawing.surface(), shape);
  drawing.fill_bands(canvas, frame, field, band_levels(), band_colours());
  drawing.stroke_bars(canvas, frame, 0.7 * style.edge_width);
  canvas.stroke(on_page(frame, field.lines(0.0)), {.colour = black, .width = style.nodal_width});
  drawing.stroke_edges(canvas, frame, style.edge_width);
  for (const Antinode& antinode : find_antinodes(field, style.sign_half_width / frame.scale))
    draw_sign(canvas, frame.on_page(antinode.position), style.sign_half_width, antinode.value >= 0.0);
}

ColourBar displacement_bar()
{
  return {.colours = band_colours(),
          .ticks = {{0.0, "\u22121"}, {0.5, "0"}, {1.0, "+1"}},
          .caption = "displacement along the normal, largest = 1"};
}

} // namespace plate
