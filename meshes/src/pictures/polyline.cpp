// SPDX-License-Identifier: MPL-2.0
#include "polyline.h"

#include <algorithm>
#include <utility>

namespace plate
{

namespace
{

double distance_to_segment(const Eigen::Vector2d& p, const Eigen::Vector2d& a, const Eigen::Vector2d& b)
{
  const Eigen::Vector2d d = b - a;
  const double squared = d.squaredNorm();
  const double t = squared > 0.0 ? std::clamp((p - a).dot(d) / squared, 0.0, 1.0) : 0.0;
  return (p - a - t * d).norm();
}

} // namespace

double length(const Polyline& line)
{
  double sum = 0.0;
  for (std::size_t i = 1; i < line.points.size(); ++i)
    sum += (line.points[i] - line.points[i - 1]).norm();
  if (line.closed && line.points.size() > 1)
    sum += (line.points.front() - line.points.back()).norm();
  return sum;
}

std::vector<Eigen::Vector2d> walked(const Polyline& line, double step)
{
  std::vector<Eigen::Vector2d> source = line.points;
  if (line.closed)
    source.push_back(line.points.front());
  std::vector<Eigen::Vector2d> points = {source.front()};
  double carried = 0.0;
  for (std::size_t i = 1; i < source.size(); ++i)
  {
    const Eigen::Vector2d d = source[i] - source[i - 1];
    const double span = d.norm();
    double at = step - carried;
    for (; at <= span; at += step)
      points.push_back(source[i - 1] + (at / span) * d);
    carried = span - (at - step);
  }
  return points;
}

Polyline simplified(const Polyline& line, double tolerance)
{
  const std::size_t n = line.points.size();
  if (n < 3)
    return line;
  std::vector<bool> keep(n, false);
  keep.front() = keep.back() = true;
  std::vector<std::pair<std::size_t, std::size_t>> open = {{0, n - 1}};
  while (!open.empty())
  {
    const auto [first, last] = open.back();
    open.pop_back();
    double worst = tolerance;
    std::size_t split = first;
    for (std::size_t i = first + 1; i < last; ++i)
    {
      const double distance = distance_to_segment(line.points[i], line.points[first], line.points[last]);
      if (distance > worst)
      {
        worst = distance;
        split = i;
      }
    }
    if (split == first)
      continue;
    keep[split] = true;
    open.emplace_back(first, split);
    open.emplace_back(split, last);
  }
  Polyline result{.points = {}, .closed = line.closed};
  for (std::size_t i = 0; i < n; ++i)
    if (keep[i])
      result.points.push_back(line.points[i]);
  return result;
}

} // namespace plate
