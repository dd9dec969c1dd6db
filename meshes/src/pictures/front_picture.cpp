// SPDX-License-Identifier: MPL-2.0
#include "plot_axes.h"

#include <plate/core/error.h>
#include <plate/core/units.h>
#include <plate/meshes/front_picture.h>

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

constexpr double page_width = 620.0;
constexpr double plot_height = 330.0;
constexpr double left = 62.0;
constexpr double right = 24.0;
constexpr double top = 34.0; // of the title
constexpr double line_height = 15.0;
constexpr double bottom = 64.0;
constexpr double dot_radius = 3.6;
constexpr Pen front_pen{.colour = {.red = 0.55, .green = 0.55, .blue = 0.55}, .width = 1.0};
constexpr Pen reference_pen{.colour = grey, .width = 1.0, .dashes = {4.0, 3.0}};

void check(const FrontPicture& picture)
{
  if (picture.points.empty())
    throw InvalidInput("write_front_picture: there are no points to draw");
  for (const FrontPoint& point : picture.points)
    if (!std::isfinite(point.mass) || !std::isfinite(point.mismatch))
      throw InvalidInput(message("write_front_picture: point '", point.label, "' has mass ", point.mass,
                                 " kg and mismatch ", point.mismatch, " cents; both must be finite"));
}

struct Axes
{
  Axis mass; // [g]
  Axis mismatch;
};

Axes axes_of(const FrontPicture& picture, double plot_top)
{
  double low = picture.reference_mass > 0.0 ? picture.reference_mass * grams : picture.points.front().mass * grams;
  double high = low;
  double most = 0.0;
  for (const FrontPoint& point : picture.points)
  {
    low = std::min(low, point.mass * grams);
    high = std::max(high, point.mass * grams);
    most = std::max(most, point.mismatch);
  }
  const double margin = std::max(0.08 * (high - low), 0.5);
  return {
      .mass = {.low = low - margin, .high = high + margin, .page_low = left, .page_high = page_width - right},
      .mismatch = {
          .low = 0.0, .high = std::max(1.12 * most, 1.0), .page_low = plot_top + plot_height, .page_high = plot_top}};
}

void draw_axes(Canvas& canvas, const Axes& axes)
{
  const PlotFrame frame = {.left = axes.mass.page_low,
                           .right = axes.mass.page_high,
                           .top = axes.mismatch.page_high,
                           .bottom = axes.mismatch.page_low};
  draw_lower_axis(canvas, frame, round_marks(axes.mass, 7), "mass of the plate in g");
  draw_upright_axis(canvas, frame, round_marks(axes.mismatch, 6), "mismatch of the modes in cents (root mean square)");
}

void draw_points(Canvas& canvas, const FrontPicture& picture, const Axes& axes)
{
  std::vector<FrontPoint> points = picture.points;
  std::stable_sort(points.begin(), points.end(),
                   [](const FrontPoint& a, const FrontPoint& b) { return a.mass < b.mass; });
  const auto place = [&](const FrontPoint& point)
  { return Eigen::Vector2d(axes.mass.on_page(point.mass * grams), axes.mismatch.on_page(point.mismatch)); };
  for (std::size_t i = 0; i + 1 < points.size(); ++i)
  {
    // What the next one's mass allows is no better than this one: the edge of the front has steps.
    const Eigen::Vector2d from = place(points[i]);
    const Eigen::Vector2d to = place(points[i + 1]);
    canvas.line(from, {to.x(), from.y()}, front_pen);
    canvas.line({to.x(), from.y()}, to, front_pen);
  }
  TextStyle name = strong_text;
  name.halo = true;
  for (const FrontPoint& point : points)
    canvas.dot(place(point), dot_radius, black);
  for (const FrontPoint& point : points)
    canvas.text(place(point) + Eigen::Vector2d(7.0, -8.0), point.label, name);
}

} // namespace

void write_front_picture(const std::filesystem::path& path, const FrontPicture& picture)
{
  check(picture);
  const double plot_top = top + line_height * static_cast<double>(picture.lines.size()) + 26.0;
  Canvas canvas(path, {page_width, plot_top + plot_height + bottom});
  canvas.rectangle({0.0, 0.0}, {page_width, plot_top + plot_height + bottom}, white);
  canvas.text({left, top - 10.0}, shortened(picture.title, title_text, page_width - left - right), title_text);
  for (std::size_t i = 0; i < picture.lines.size(); ++i)
    canvas.text({left, top + 10.0 + line_height * static_cast<double>(i)},
                shortened(picture.lines[i], note_text, page_width - left - right), note_text);
  const Axes axes = axes_of(picture, plot_top);
  draw_axes(canvas, axes);
  if (picture.reference_mass > 0.0)
  {
    const double x = axes.mass.on_page(picture.reference_mass * grams);
    canvas.line({x, axes.mismatch.page_low}, {x, axes.mismatch.page_high}, reference_pen);
    canvas.text({x, axes.mismatch.page_high - 9.0}, "reference", aligned(note_text, Align::centre));
  }
  draw_points(canvas, picture, axes);
  canvas.write();
}

} // namespace plate
