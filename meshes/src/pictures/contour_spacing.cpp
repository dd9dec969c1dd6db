// SPDX-License-Identifier: MPL-2.0
#include "contour_spacing.h"

#include "nearby_points.h"

#include <utility>

namespace plate
{

namespace
{

std::vector<Eigen::Vector2d> points_of(const std::vector<Polyline>& lines, double step)
{
  std::vector<Eigen::Vector2d> points;
  for (const Polyline& line : lines)
    for (const Eigen::Vector2d& point : walked(line, step))
      points.push_back(point);
  return points;
}

/// The parts of a line whose points are free.
template <class IsFree>
std::vector<Polyline> free_parts(const Polyline& line, double step, const IsFree& is_free)
{
  const std::vector<Eigen::Vector2d> points = walked(line, step);
  std::vector<Polyline> parts(1);
  bool all_free = true;
  for (const Eigen::Vector2d& point : points)
    if (is_free(point))
      parts.back().points.push_back(point);
    else
    {
      all_free = false;
      if (!parts.back().points.empty())
        parts.emplace_back();
    }
  if (all_free)
    return {line};
  if (line.closed && is_free(points.front()) && is_free(points.back())) // one part around the line's beginning
  {
    parts.back().points.insert(parts.back().points.end(), parts.front().points.begin(), parts.front().points.end());
    parts.erase(parts.begin());
  }
  return parts;
}

} // namespace

std::vector<std::vector<Polyline>> without_crowds(const std::vector<std::vector<Polyline>>& levels, double distance)
{
  const double step = 0.4 * distance;
  const double shortest = 12.0 * distance; // shorter lines look like dirt
  std::vector<NearbyPoints> places;
  places.reserve(levels.size());
  for (const std::vector<Polyline>& lines : levels)
    places.emplace_back(points_of(lines, step), distance);
  std::vector<std::vector<Polyline>> result(levels.size());
  for (std::size_t k = 0; k < levels.size(); ++k)
  {
    const auto is_free = [&](const Eigen::Vector2d& point)
    {
      return !(k > 0 && places[k - 1].any_within(point, distance)) &&
             !(k + 1 < levels.size() && places[k + 1].any_within(point, distance));
    };
    for (const Polyline& line : levels[k])
      for (Polyline& part : free_parts(line, step, is_free))
        if (length(part) >= shortest)
          result[k].push_back(std::move(part));
  }
  return result;
}

} // namespace plate
