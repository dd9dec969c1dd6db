// SPDX-License-Identifier: MPL-2.0
#include <plate/mesh/planform_region.h>

#include <plate/core/error.h>

#include <cmath>
#include <numbers>

namespace plate
{

namespace
{

using Eigen::Vector2d;

double cross(const Vector2d& a, const Vector2d& b)
{
  return a.x() * b.y() - a.y() * b.x();
}

/// Unit vector along the first axis.
Vector2d direction(const EllipseRegion& ellipse)
{
  return {std::cos(ellipse.angle.in_radians()), std::sin(ellipse.angle.in_radians())};
}

bool inside(const EllipseRegion& ellipse, const Vector2d& point)
{
  const Vector2d along = direction(ellipse);
  const Vector2d from_centre = point - ellipse.centre;
  return std::hypot(2.0 * along.dot(from_centre) / ellipse.axes.x(),
                    2.0 * cross(along, from_centre) / ellipse.axes.y()) <= 1.0;
}

bool inside(const PolygonRegion& polygon, const Vector2d& point)
{
  return polygon_contains(polygon.points, point);
}

double signed_area(const PolygonRegion& polygon)
{
  double sum = 0.0;
  for (std::size_t i = 0; i < polygon.points.size(); ++i)
    sum += 0.5 * cross(polygon.points[i], polygon.points[(i + 1) % polygon.points.size()]);
  return sum;
}

bool sides_cross(const Vector2d& a, const Vector2d& b, const Vector2d& c, const Vector2d& d)
{
  return cross(b - a, c - a) * cross(b - a, d - a) < 0.0 && cross(d - c, a - c) * cross(d - c, b - c) < 0.0;
}

void check(const EllipseRegion& ellipse)
{
  if (!(ellipse.centre.allFinite() && ellipse.axes.allFinite() && ellipse.axes.minCoeff() > 0.0))
    throw InvalidInput(message("ellipse: centre must be finite and both axes positive; got axes ",
                               ellipse.axes.x() * 1e3, " and ", ellipse.axes.y() * 1e3, " mm"));
}

void check(const PolygonRegion& polygon)
{
  const std::vector<Vector2d>& p = polygon.points;
  const std::size_t n = p.size();
  if (n < 3)
    throw InvalidInput(message("polygon: has ", n, " corners; at least 3 are needed"));
  for (const Vector2d& corner : p)
    if (!corner.allFinite())
      throw InvalidInput("polygon: a corner is not finite");
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = i + 2; j < n; ++j)
      if ((i > 0 || j + 1 < n) && sides_cross(p[i], p[i + 1], p[j], p[(j + 1) % n]))
        throw InvalidInput(message("polygon: its sides from corners ", i + 1, " and ", j + 1, " cross each other"));
  if (!(std::abs(signed_area(polygon)) > 0.0))
    throw InvalidInput("polygon: its corners lie on one line");
}

} // namespace

bool polygon_contains(std::span<const Vector2d> polygon, const Vector2d& point)
{
  bool within = false;
  for (std::size_t i = 0; i < polygon.size(); ++i)
  {
    const Vector2d& a = polygon[i];
    const Vector2d& b = polygon[(i + 1) % polygon.size()];
    if ((a.y() > point.y()) == (b.y() > point.y()))
      continue;
    if (point.x() < a.x() + (b.x() - a.x()) * (point.y() - a.y()) / (b.y() - a.y()))
      within = !within;
  }
  return within;
}

bool contains(const PlanformRegion& region, const Vector2d& point)
{
  return std::visit([&](const auto& shape) { return inside(shape, point); }, region);
}

double region_area(const PlanformRegion& region)
{
  if (const auto* ellipse = std::get_if<EllipseRegion>(&region))
    return 0.25 * std::numbers::pi * ellipse->axes.prod();
  return std::abs(signed_area(std::get<PolygonRegion>(region)));
}

std::vector<Vector2d> edge_of(const PlanformRegion& region)
{
  if (const auto* polygon = std::get_if<PolygonRegion>(&region))
    return polygon->points;
  const auto& ellipse = std::get<EllipseRegion>(region);
  constexpr int points = 360;
  const Vector2d along = direction(ellipse);
  const Vector2d across(-along.y(), along.x());
  std::vector<Vector2d> edge;
  for (int k = 0; k < points; ++k)
  {
    const double a = 2.0 * std::numbers::pi * k / points;
    edge.emplace_back(ellipse.centre + 0.5 * ellipse.axes.x() * std::cos(a) * along +
                      0.5 * ellipse.axes.y() * std::sin(a) * across);
  }
  return edge;
}

void check_region(const PlanformRegion& region)
{
  std::visit([](const auto& shape) { check(shape); }, region);
}

} // namespace plate
