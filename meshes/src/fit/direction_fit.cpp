// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/direction_fit.h>

#include <plate/core/error.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace plate
{

namespace
{

Eigen::Vector2d raw_double_angle(const DirectionField& field, const Eigen::Vector2d& point)
{
  return {evaluate(field.cosine, point).value, evaluate(field.sine, point).value};
}

/// Points left out by either fit, each once, in the order of the list.
std::vector<std::size_t> left_out(const FitReport& a, const FitReport& b)
{
  std::vector<std::size_t> points;
  for (const FitReport* report : {&a, &b})
    for (const FitResidual& outlier : report->outliers)
      points.push_back(outlier.point);
  std::sort(points.begin(), points.end());
  points.erase(std::unique(points.begin(), points.end()), points.end());
  return points;
}

/// Angle from the fitted direction to the measured one, within a quarter turn [rad].
double residual(const DirectionField& field, const MeasuredDirection& measured)
{
  const Eigen::Vector2d fitted = double_angle(field, measured.place);
  const double twice = 2.0 * measured.angle.in_radians() - std::atan2(fitted.y(), fitted.x());
  return 0.5 * std::remainder(twice, 2.0 * std::numbers::pi);
}

FitReport report_of(const DirectionField& field, std::span<const MeasuredDirection> points,
                    const std::vector<std::size_t>& outliers)
{
  FitReport report;
  double squares = 0.0;
  for (std::size_t i = 0; i < points.size(); ++i)
  {
    const FitResidual r = {.point = i, .place = points[i].place, .residual = residual(field, points[i])};
    if (std::binary_search(outliers.begin(), outliers.end(), i))
    {
      report.outliers.push_back(r);
      continue;
    }
    ++report.points;
    squares += r.residual * r.residual;
    if (std::abs(r.residual) > std::abs(report.largest.residual))
      report.largest = r;
  }
  report.rms = std::sqrt(squares / static_cast<double>(std::max<std::size_t>(report.points, 1)));
  return report;
}

} // namespace

Eigen::Vector2d double_angle(const DirectionField& field, const Eigen::Vector2d& point)
{
  return raw_double_angle(field, point).normalized();
}

DirectionFit fit_directions(std::span<const MeasuredDirection> points, std::span<const Eigen::Vector2d> region)
{
  std::vector<SurfacePoint> cosines;
  std::vector<SurfacePoint> sines;
  for (const MeasuredDirection& p : points)
  {
    cosines.push_back({p.place, std::cos(2.0 * p.angle.in_radians())});
    sines.push_back({p.place, std::sin(2.0 * p.angle.in_radians())});
  }
  const SurfaceFit cosine = fit_surface(cosines, region);
  const SurfaceFit sine = fit_surface(sines, region);
  DirectionFit fit = {.field = {cosine.surface, sine.surface}, .report = {}};
  constexpr double least = 0.3; // of a unit vector: less, and the directions around cancel each other
  for (const Eigen::Vector2d& point : region)
    if (!(raw_double_angle(fit.field, point).norm() > least))
      throw InvalidInput(message("directions: those near x = ", point.x() * 1e3, ", y = ", point.y() * 1e3,
                                 " mm contradict each other; are the angles in degrees from x?"));
  fit.report = report_of(fit.field, points, left_out(cosine.report, sine.report));
  return fit;
}

} // namespace plate
