// SPDX-License-Identifier: MPL-2.0
#include "plate_drawing.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <numbers>

namespace plate
{

std::vector<Polyline> on_page(const Frame& frame, std::span<const Polyline> lines)
{
  constexpr double tolerance = 0.04; // picture units; a twelfth of a pixel of the PNG
  std::vector<Polyline> result;
  for (const Polyline& line : lines)
  {
    Polyline moved{.points = {}, .closed = line.closed};
    for (const Eigen::Vector2d& point : line.points)
      moved.points.push_back(frame.on_page(point));
    result.push_back(simplified(moved, tolerance));
  }
  return result;
}

std::string label_number(double value, int decimals)
{
  std::array<char, 64> buffer{};
  const auto end =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), std::abs(value), std::chars_format::fixed, decimals);
  const std::string digits(buffer.data(), end.ptr);
  const bool is_zero = digits.find_first_not_of("0.") == std::string::npos;
  return value < 0.0 && !is_zero ? "\u2212" + digits : digits;
}

PlateDrawing::PlateDrawing(const PlateView& view, int pieces)
    : surface_(refine(view.mesh, drawing_divisions(view.mesh, pieces)))
{
  edges_ = boundary_lines(surface_);
  for (const BarFootprint& bar : view.mesh.bars)
    for (Polyline& line : outline_of(surface_, bar.triangles))
      bars_.push_back(std::move(line));
  low_ = high_ = surface_.points.front();
  for (const Eigen::Vector2d& point : surface_.points)
  {
    low_ = low_.cwiseMin(point);
    high_ = high_.cwiseMax(point);
  }
}

Frame PlateDrawing::fit(const Eigen::Vector2d& corner, const Eigen::Vector2d& size) const
{
  return {.plate_centre = 0.5 * (low_ + high_),
          .page_centre = corner + 0.5 * size,
          .scale = std::min(size[0] / body_width(), size[1] / body_length())};
}

void PlateDrawing::fill_bands(Canvas& canvas, const Frame& frame, const ContouredField& field,
                              std::span<const double> levels, std::span<const Colour> colours) const
{
  // Bands overlap towards the higher side, so that no gap can show between two of them.
  canvas.fill(on_page(frame, edges_), colours.front());
  for (std::size_t k = 0; k < levels.size(); ++k)
    if (field.highest() >= levels[k])
      canvas.fill(on_page(frame, field.region_above(levels[k])), colours[k + 1]);
}

void PlateDrawing::stroke_edges(Canvas& canvas, const Frame& frame, double width) const
{
  canvas.stroke(on_page(frame, edges_), {.colour = black, .width = width});
}

void PlateDrawing::stroke_bars(Canvas& canvas, const Frame& frame, double width) const
{
  if (has_bars())
    canvas.stroke(on_page(frame, bars_), {.colour = grey, .width = width, .dash = 5.0 * width});
}

void draw_directions(Canvas& canvas, const PlateView& view, const Frame& frame, double width, double height)
{
  const TextStyle style{.size = 9.0, .colour = grey, .align = Align::centre};
  canvas.text(frame.page_centre - Eigen::Vector2d(0.0, 0.5 * height + 9.0), view.up, style);
  TextStyle side = style;
  side.turn = -0.5 * std::numbers::pi;
  canvas.text(frame.page_centre - Eigen::Vector2d(0.5 * width + 11.0, 0.0), view.left, side);
  side.turn = 0.5 * std::numbers::pi;
  canvas.text(frame.page_centre + Eigen::Vector2d(0.5 * width + 11.0, 0.0), view.right, side);
}

void draw_scale_bar(Canvas& canvas, const Frame& frame, const Eigen::Vector2d& start)
{
  constexpr double longest = 80.0; // picture units
  double bar_length = 0.001;       // [m]
  for (const double candidate : {0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0})
    if (candidate * frame.scale <= longest)
      bar_length = candidate;
  const Pen pen{.colour = black, .width = 1.2};
  const Eigen::Vector2d end = start + Eigen::Vector2d(bar_length * frame.scale, 0.0);
  const Eigen::Vector2d tick(0.0, 3.0);
  canvas.line(start, end, pen);
  canvas.line(start - tick, start + tick, pen);
  canvas.line(end - tick, end + tick, pen);
  canvas.text(end + Eigen::Vector2d(6.0, 0.0), label_number(1000.0 * bar_length, 0) + " mm", {.size = 9.0});
}

void draw_line_key(Canvas& canvas, const Eigen::Vector2d& start, const Pen& pen, const std::string& words)
{
  const Eigen::Vector2d end = start + Eigen::Vector2d(22.0, 0.0);
  canvas.line(start, end, pen);
  canvas.text(end + Eigen::Vector2d(6.0, 0.0), words, {.size = 9.0});
}

void draw_bar_key(Canvas& canvas, const PlateDrawing& drawing, const Eigen::Vector2d& start)
{
  if (drawing.has_bars())
    draw_line_key(canvas, start, {.colour = grey, .width = 0.84, .dash = 4.2}, "bar, inside");
}

void draw_colour_bar(Canvas& canvas, const ColourBar& bar, const Eigen::Vector2d& corner, double width)
{
  constexpr double height = 11.0;
  const double step = width / static_cast<double>(bar.colours.size());
  // Each field reaches to the right end and the next one covers it: no seams.
  for (std::size_t k = 0; k < bar.colours.size(); ++k)
  {
    const double left = step * static_cast<double>(k);
    canvas.rectangle(corner + Eigen::Vector2d(left, 0.0), {width - left, height}, bar.colours[k]);
  }
  for (const ColourBar::Tick& tick : bar.ticks)
  {
    const Eigen::Vector2d foot = corner + Eigen::Vector2d(tick.at * width, height);
    canvas.line(foot, foot + Eigen::Vector2d(0.0, 3.0), {.colour = black, .width = 0.8});
    canvas.text(foot + Eigen::Vector2d(0.0, 10.0), tick.label, {.size = 9.0, .align = Align::centre});
  }
  canvas.text(corner + Eigen::Vector2d(0.5 * width, height + 24.0), bar.caption,
              {.size = 9.0, .colour = grey, .align = Align::centre});
}

} // namespace plate
