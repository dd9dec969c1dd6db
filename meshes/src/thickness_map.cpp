// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/thickness_map.h>

#include "fit/point_checks.h"

#include <plate/core/error.h>

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

// Extent of the thick centre (standard deviations) and of the way from channel to bout. Common practice, no source.
constexpr double centre_along = 0.10;  // [parts of the length]
constexpr double centre_across = 0.15; // [parts of the width]
constexpr double bout_reach = 0.12;    // from the channel [parts of the width]

void check_positive(const char* what, double value)
{
  if (!(std::isfinite(value) && value > 0.0))
    throw InvalidInput(message("thickness: ", what, " must be positive; got ", value * 1e3, " mm"));
}

// From 0 to 1 over s in [0, 1], continuous to the second derivative.
double smooth_step(double s)
{
  if (s <= 0.0)
    return 0.0;
  if (s >= 1.0)
    return 1.0;
  return s * s * s * (10.0 - 15.0 * s + 6.0 * s * s);
}

// Distance from the inner shape's boundary, positive inside: true near the boundary, only smooth and large further in.
double distance_inside(const InnerShape& shape, double width, const Eigen::Vector2d& point)
{
  const InnerShape::Width b = shape.at(point.x());
  const double level = b.squared - point.y() * point.y();
  const double floor = 0.1 * width; // keeps the distance finite where the gradient vanishes
  return level / std::sqrt(b.slope * b.slope + 4.0 * point.y() * point.y() + floor * floor);
}

void check_positive(const GraduatedThickness& t)
{
  check_positive("centre", t.centre);
  check_positive("bouts", t.bouts);
  check_positive("channel", t.channel);
  check_positive("edge", t.edge);
}

} // namespace

ThicknessField::ThicknessField(const Outline& outline, const ThicknessMap& map)
    : map_(map), length_(outline_length(outline)), width_(outline_width(outline)), shape_(outline)
{
  if (const auto* uniform = std::get_if<UniformThickness>(&map))
  {
    check_positive("value", uniform->value);
    return;
  }
  if (const auto* surface = std::get_if<SurfaceThickness>(&map))
  {
    check_surface(*surface, outline);
    return;
  }
  check_positive(std::get<GraduatedThickness>(map));
}

double ThicknessField::at(const Eigen::Vector2d& point) const
{
  if (const auto* uniform = std::get_if<UniformThickness>(&map_))
    return uniform->value;
  if (const auto* graduation = std::get_if<GraduatedThickness>(&map_))
    return graduated(*graduation, point);
  const auto& measured = std::get<SurfaceThickness>(map_);
  const double base = measured.graduation ? graduated(*measured.graduation, point) : 0.0;
  return measured.scale * (base + evaluate(measured.deviation, point).value);
}

// A surface may fall to zero where nothing was measured.
void ThicknessField::check_surface(const SurfaceThickness& map, const Outline& outline) const
{
  if (!(std::isfinite(map.scale) && map.scale > 0.0))
    throw InvalidInput(message("thickness: the factor must be positive; got ", map.scale));
  double bound = map.deviation.coefficients.minCoeff(); // no value of the splines is below
  if (const auto& g = map.graduation)
  {
    check_positive(*g);
    bound += std::min({g->centre, g->bouts, g->channel, g->edge});
  }
  if (bound > 0.0)
    return;
  constexpr double thinnest = 1e-5; // [m]
  for (const Eigen::Vector2d& p : grid_inside(sample(outline_loop(outline), 16)))
    if (!(at(p) > thinnest))
      throw InvalidInput(message("thickness: the surface falls to ", at(p) * 1e3, " mm at ", place_in_mm(p),
                                 "; it must be positive inside the outline: measure more points there"));
}

double ThicknessField::graduated(const GraduatedThickness& t, const Eigen::Vector2d& point) const
{
  const double channel_at = shape_.channel() - shape_.rim();
  const bool beyond = std::abs(point.x()) >= shape_.half_length();
  const double inside = beyond ? 0.0 : distance_inside(shape_, width_, point);
  const double to_channel = smooth_step(inside / channel_at);
  const double to_bout = smooth_step((inside - channel_at) / (bout_reach * width_));
  const double u = point.x() / (centre_along * length_);
  const double v = point.y() / (centre_across * width_);
  const double to_centre = std::exp(-0.5 * (u * u + v * v));
  return t.edge + (t.channel - t.edge) * to_channel + (t.bouts - t.channel) * to_bout +
         (t.centre - t.bouts) * to_centre * to_bout;
}

} // namespace plate
