// SPDX-License-Identifier: MPL-2.0
#include "point_path.h"

#include "point_checks.h"

#include <plate/core/error.h>

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

using Eigen::Vector2d;

constexpr double same_place = 1e-7;   // over the diagonal of all points
constexpr double stride = 0.01;       // of the points looked at for their order, over the diagonal: noise is shorter
constexpr double longest_path = 30.0; // of a curve that is in order, over the diagonal: an f-hole has about four
constexpr double most_detour = 1.6;   // path as given over one from neighbour to neighbour, which is no optimum
constexpr double least_detour = 0.05; // over the diagonal: less is a single outlier

double twice_area(const std::vector<Vector2d>& points)
{
  double sum = 0.0;
  for (std::size_t i = 0; i < points.size(); ++i)
  {
    const Vector2d &a = points[i], &b = points[(i + 1) % points.size()];
    sum += a.x() * b.y() - a.y() * b.x();
  }
  return sum;
}

// Points at least a stride from the one before.
std::vector<Vector2d> strides(const std::vector<Vector2d>& points, double least)
{
  std::vector<Vector2d> out{points.front()};
  for (const Vector2d& p : points)
    if ((p - out.back()).norm() >= least)
      out.push_back(p);
  return out;
}

double path_length(const std::vector<Vector2d>& points)
{
  double sum = 0.0;
  for (std::size_t i = 0; i < points.size(); ++i)
    sum += (points[(i + 1) % points.size()] - points[i]).norm();
  return sum;
}

// Length of the closed path that always goes on to the nearest point not yet visited.
double neighbour_path_length(std::vector<Vector2d> points)
{
  const Vector2d first = points.back();
  Vector2d here = first;
  double sum = 0.0;
  points.pop_back();
  while (!points.empty())
  {
    const auto nearer = [&](const Vector2d& a, const Vector2d& b)
    { return (a - here).squaredNorm() < (b - here).squaredNorm(); };
    const auto next = std::min_element(points.begin(), points.end(), nearer);
    sum += (*next - here).norm();
    here = *next;
    *next = points.back();
    points.pop_back();
  }
  return sum + (first - here).norm();
}

void check_order(const std::vector<Vector2d>& points, double diagonal)
{
  const std::vector<Vector2d> sparse = strides(points, stride * diagonal);
  const double given = path_length(sparse);
  const bool endless = given > longest_path * diagonal;
  const double short_one = endless ? 0.0 : neighbour_path_length(sparse);
  if (!endless && (given < most_detour * short_one || given < short_one + 4.0 * least_detour * diagonal))
    return;
  throw InvalidInput(message("points: not in order along a closed curve: the path from point to point is ", given * 1e3,
                             " mm long",
                             endless ? "" : message(", from neighbour to neighbour ", short_one * 1e3, " mm"),
                             "; list them in the order in which they lie along the curve"));
}

} // namespace

std::size_t PointPath::on(std::size_t i, std::ptrdiff_t steps) const
{
  const auto n = static_cast<std::ptrdiff_t>(points.size());
  return static_cast<std::size_t>(((static_cast<std::ptrdiff_t>(i) + steps) % n + n) % n);
}

PointPath PointPath::without(const std::vector<char>& marked) const
{
  PointPath rest;
  for (std::size_t i = 0; i < size(); ++i)
    if (marked[i] == 0)
    {
      rest.points.push_back(points[i]);
      rest.origin.push_back(origin[i]);
    }
  return rest;
}

PointPath ordered_path(std::span<const Vector2d> points)
{
  check_points(points, 3);
  const double diagonal = box_of(points).diagonal();
  const auto same = [&](const Vector2d& a, const Vector2d& b) { return (a - b).norm() < same_place * diagonal; };
  PointPath path;
  for (std::size_t i = 0; i < points.size(); ++i)
    if (path.points.empty() || !same(points[i], path.points.back()))
    {
      path.points.push_back(points[i]);
      path.origin.push_back(i);
    }
  if (same(path.points.front(), path.points.back()))
  {
    path.points.pop_back();
    path.origin.pop_back();
  }
  if (path.size() < 3)
    throw InvalidInput(message("points: a closed curve needs 3 different ones; got ", path.size()));
  check_order(path.points, diagonal);
  if (twice_area(path.points) < 0.0)
  {
    std::reverse(path.points.begin(), path.points.end());
    std::reverse(path.origin.begin(), path.origin.end());
  }
  return path;
}

} // namespace plate
