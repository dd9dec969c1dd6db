// SPDX-License-Identifier: MPL-2.0
#include "axis.h"
#include "curve_style.h"
#include "legend.h"

#include <plate/core/error.h>
#include <plate/meshes/polar_picture.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace plate
{

namespace
{

// Picture units.
constexpr double radius = 140.0; // of the outer circle
constexpr double panel_width = 2.0 * radius + 90.0;
constexpr double title_at = 20.0;
constexpr double heading_at = 46.0;
constexpr double centre_at = heading_at + 38.0 + radius;
constexpr double legend_at = centre_at + radius + 34.0;
constexpr double label_distance = 12.0; // of a direction's label from the outer circle
constexpr double value_direction =
    0.375 * std::numbers::pi; // of the ray with the values; curves have extremes elsewhere

void check(const PolarCurve& curve)
{
  if (curve.values.size() < 3)
    throw InvalidInput(message("write_polar_picture: curve '", curve.label, "' has ", curve.values.size(),
                               " values; give at least three at equal angles"));
  for (const double value : curve.values)
    if (!(value >= 0.0 && std::isfinite(value)))
      throw InvalidInput(message("write_polar_picture: curve '", curve.label, "' has the value ", value,
                                 "; values must be finite and not negative"));
}

/// Labels of all curves in order of appearance, each once.
std::vector<std::string> labels_of(const PolarPicture& picture)
{
  std::vector<std::string> labels;
  for (const PolarPanel& panel : picture.panels)
    for (const PolarCurve& curve : panel.curves)
      if (std::find(labels.begin(), labels.end(), curve.label) == labels.end())
        labels.push_back(curve.label);
  return labels;
}

double greatest_value(const PolarPanel& panel)
{
  double greatest = 0.0;
  for (const PolarCurve& curve : panel.curves)
    for (const double value : curve.values)
      greatest = std::max(greatest, value);
  return greatest;
}

void check(const PolarPicture& picture)
{
  if (picture.panels.empty() || picture.panels.size() > 2)
    throw InvalidInput(message("write_polar_picture: there are ", picture.panels.size(), " panels; give one or two"));
  for (const PolarPanel& panel : picture.panels)
  {
    for (const PolarCurve& curve : panel.curves)
      check(curve);
    if (!(greatest_value(panel) > 0.0))
      throw InvalidInput(message("write_polar_picture: panel '", panel.heading, "' has ", panel.curves.size(),
                                 " curves and no value above 0; nothing to draw"));
  }
  if (const std::size_t count = labels_of(picture).size(); count > num_curve_pens)
    throw InvalidInput(message("write_polar_picture: there are ", count, " labels, lines that can be told apart are ",
                               num_curve_pens, "; split the picture"));
}

/// From the centre, at an angle as that of a ply: 0 up, growing to the left.
Eigen::Vector2d on_ray(const Eigen::Vector2d& centre, double angle, double distance)
{
  return centre - distance * Eigen::Vector2d(std::sin(angle), std::cos(angle));
}

class Panel
{
public:
  Panel(Canvas& canvas, const PolarPanel& panel, const Eigen::Vector2d& centre)
      : canvas_(canvas), panel_(panel), centre_(centre), ticks_(round_ticks(0.0, greatest_value(panel), 3))
  {
    if (ticks_.values.back() < greatest_value(panel) * (1.0 - 1e-9)) // the outer circle encloses the curves
      ticks_.values.push_back(ticks_.values.back() + ticks_.step);
  }

  void draw(const std::vector<std::string>& labels)
  {
    canvas_.text({centre_[0], heading_at}, panel_.heading + ", " + panel_.unit, aligned(strong_text, Align::centre));
    draw_grid();
    for (const PolarCurve& curve : panel_.curves)
    {
      const auto label = std::find(labels.begin(), labels.end(), curve.label);
      draw_curve(curve, curve_pen(static_cast<std::size_t>(label - labels.begin())));
    }
    draw_values();
  }

private:
  [[nodiscard]] double distance(double value) const { return radius * value / ticks_.values.back(); }

  void draw_grid()
  {
    constexpr int rays = 12;
    constexpr double turn = 2.0 * std::numbers::pi;
    for (int ray = 0; ray < rays; ++ray)
    {
      const double angle = turn * ray / rays;
      canvas_.line(centre_, on_ray(centre_, angle, radius), {.colour = pale, .width = ray % 3 == 0 ? 1.0 : 0.6});
      const std::string words = std::to_string(360 / rays * ray) + "\u00b0";
      const Eigen::Vector2d place = on_ray(centre_, angle, radius + label_distance + 3.0 * std::abs(std::sin(angle)));
      if (ray > 0)
        canvas_.text(place, words, aligned(note_text, Align::centre));
      else
        canvas_.text(place, words + " neck end", aligned(note_text, Align::centre));
    }
    for (const double value : ticks_.values)
      if (value > 0.0)
        canvas_.ring(centre_, distance(value), {.colour = pale, .width = 0.8});
    canvas_.ring(centre_, radius, {.colour = grey, .width = 0.8});
  }

  void draw_curve(const PolarCurve& curve, const Pen& pen)
  {
    Polyline line{.points = {}, .closed = true};
    const auto count = static_cast<double>(curve.values.size());
    for (std::size_t i = 0; i < curve.values.size(); ++i)
      line.points.push_back(
          on_ray(centre_, 2.0 * std::numbers::pi * static_cast<double>(i) / count, distance(curve.values[i])));
    canvas_.stroke({&line, 1}, pen);
  }

  void draw_values()
  {
    TextStyle style = aligned(label_text, Align::centre);
    style.halo = true;
    for (const double value : ticks_.values)
      if (value > 0.0)
        canvas_.text(on_ray(centre_, -value_direction, distance(value) - 1.0), label_number(value, ticks_.decimals),
                     style);
  }

  Canvas& canvas_;
  const PolarPanel& panel_;
  Eigen::Vector2d centre_;
  Ticks ticks_;
};

} // namespace

void write_polar_picture(const std::filesystem::path& path, const PolarPicture& picture)
{
  check(picture);
  const std::vector<std::string> labels = labels_of(picture);
  Legend legend;
  for (std::size_t i = 0; i < labels.size(); ++i)
    legend.items.push_back(line_item({curve_pen(i)}, labels[i]));
  const double width = panel_width * static_cast<double>(picture.panels.size());
  Canvas canvas(path, {width, legend_at + legend.height(width)});
  canvas.text({0.5 * width, title_at}, shortened(picture.title, title_text, width - 28.0),
              aligned(title_text, Align::centre));
  for (std::size_t i = 0; i < picture.panels.size(); ++i)
    Panel(canvas, picture.panels[i], {panel_width * (static_cast<double>(i) + 0.5), centre_at}).draw(labels);
  legend.draw(canvas, legend_at);
  canvas.write();
}

} // namespace plate
