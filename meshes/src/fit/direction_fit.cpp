// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/direction_fit.h>

#include <plate/core/error.h>

#include <cmath>
#include <numbers>
#include <utility>

namespace plate
{

namespace
{

constexpr double degree = std::numbers::pi / 180.0;
constexpr double furthest = 60.0 * degree;

/// Mean of directions without head and tail: that of the doubled angles.
double mean_direction(std::span<const MeasuredDirection> points)
{
  Eigen::Vector2d sum = Eigen::Vector2d::Zero();
  for (const MeasuredDirection& p : points)
    sum += Eigen::Vector2d(std::cos(2.0 * p.angle.in_radians()), std::sin(2.0 * p.angle.in_radians()));
  return 0.5 * std::atan2(sum.y(), sum.x());
}

} // namespace

Angle direction_at(const DirectionField& field, const Eigen::Vector2d& point)
{
  return Angle::radians(field.mean.in_radians() + evaluate(field.deviation, point).value);
}

DirectionFit fit_directions(std::span<const MeasuredDirection> points, std::span<const Eigen::Vector2d> region)
{
  const double mean = mean_direction(points);
  std::vector<SurfacePoint> deviations;
  for (const MeasuredDirection& p : points)
  {
    const double deviation = std::remainder(p.angle.in_radians() - mean, std::numbers::pi);
    if (std::abs(deviation) > furthest)
      throw InvalidInput(message("direction ", p.angle.in_radians() / degree, " degrees at x = ", p.place.x() * 1e3,
                                 ", y = ", p.place.y() * 1e3, " mm lies ", std::abs(deviation) / degree,
                                 " degrees off the mean direction ", mean / degree,
                                 "; at most 60 are allowed; are the angles in degrees from x?"));
    deviations.push_back({p.place, deviation});
  }
  SurfaceFit fit = fit_surface(deviations, region);
  return {.field = {Angle::radians(mean), std::move(fit.surface)}, .report = std::move(fit.report)};
}

} // namespace plate
