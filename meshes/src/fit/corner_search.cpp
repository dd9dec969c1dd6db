// SPDX-License-Identifier: MPL-2.0
#include "corner_search.h"

#include "point_checks.h"
#include "robust.h"

#include <Eigen/Dense>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace plate
{

namespace
{

using Eigen::Vector2d;

constexpr double degree = std::numbers::pi / 180.0;
constexpr double always_corner = 65.0 * degree; // between neighbours: a hexagon may still be a coarse circle
constexpr double least_corner = 30.0 * degree;
constexpr double calmer = 0.5;               // turn to one side of a corner over that at it
constexpr double reach_over_noise = 20.0;    // of directions: noise then turns them by about 7 degrees
constexpr double least_deviations = 4.5;     // of a corner's turn, in standard deviations of the noise in it
constexpr double most_reach = 30.0;          // over the median distance of the points
constexpr std::size_t points_for_noise = 16; // fewer say nothing about it

double turn(const Vector2d& before, const Vector2d& after)
{
  return std::atan2(before.x() * after.y() - before.y() * after.x(), before.dot(after));
}

double median_step(const PointPath& path)
{
  std::vector<double> steps;
  for (std::size_t i = 0; i < path.size(); ++i)
    steps.push_back((path.points[path.on(i, 1)] - path.points[i]).norm());
  return median(std::move(steps));
}

// Deviation of a point from the cubic through its four neighbours, in standard deviations of its own noise.
double deviation_from_neighbours(const PointPath& path, std::size_t i)
{
  constexpr std::array<std::ptrdiff_t, 4> steps{-2, -1, 1, 2};
  const Vector2d axis = (path.points[path.on(i, 2)] - path.points[path.on(i, -2)]).normalized();
  const Vector2d left(-axis.y(), axis.x());
  std::array<Vector2d, 4> local; // about the point
  for (std::size_t k = 0; k < 4; ++k)
  {
    const Vector2d d = path.points[path.on(i, steps[k])] - path.points[i];
    local[k] = {axis.dot(d), left.dot(d)};
  }
  double value = 0.0;
  double variance = 1.0;
  for (std::size_t k = 0; k < 4; ++k)
  {
    double weight = 1.0; // Lagrange
    for (std::size_t j = 0; j < 4; ++j)
      if (j != k)
        weight *= -local[j].x() / (local[k].x() - local[j].x());
    value += weight * local[k].y();
    variance += weight * weight;
  }
  return value / std::sqrt(variance);
}

// Standard deviation of the noise across the path; zero if there are too few points to tell.
double noise_of(const PointPath& path)
{
  if (path.size() < points_for_noise)
    return 0.0;
  std::vector<double> deviations;
  for (std::size_t i = 0; i < path.size(); ++i)
    if (const double d = deviation_from_neighbours(path, i); std::isfinite(d))
      deviations.push_back(d);
  return deviations.empty() ? 0.0 : robust_deviation(deviations);
}

// Turns of the path at its points, the directions taken over a reach to both sides.
class Turns
{
public:
  Turns(const PointPath& path, double reach) : path_(path), reach_(reach)
  {
    for (std::size_t i = 0; i < path.size(); ++i)
    {
      const Direction before = direction(i, -1), after = direction(i, 1);
      turns_.push_back(std::abs(turn(-before.axis, after.axis)));
      variances_.push_back(1.0 / before.spread + 1.0 / after.spread);
    }
  }

  // Standard deviation of the turn for noise of a standard deviation in the points.
  [[nodiscard]] double deviation(std::size_t i, double noise) const { return noise * std::sqrt(variances_[i]); }

  [[nodiscard]] double at(std::size_t i) const { return turns_[i]; }

  // The turn at the first point further away than a distance.
  [[nodiscard]] double beyond(std::size_t i, double distance, std::ptrdiff_t sense) const
  {
    std::size_t j = path_.on(i, sense);
    while (j != i && away(i, j) < distance)
      j = path_.on(j, sense);
    return turns_[j];
  }

  // Whether no point within the reach turns more; of equal ones the first wins.
  [[nodiscard]] bool is_peak(std::size_t i) const
  {
    for (const std::ptrdiff_t sense : {-1, 1})
      for (std::size_t j = path_.on(i, sense); j != i && away(i, j) < 0.99 * reach_; j = path_.on(j, sense))
        if (turns_[j] > turns_[i] || (turns_[j] == turns_[i] && j < i))
          return false;
    return true;
  }

private:
  struct Direction
  {
    Vector2d axis;
    double spread; // sum of squares of the points' places along it [m^2]
  };

  [[nodiscard]] double away(std::size_t i, std::size_t j) const { return (path_.points[i] - path_.points[j]).norm(); }

  // Away from a point along the path: of the straight line through the points within the reach. The point itself takes
  // part only if there are few others, so that it makes no corner of its own noise.
  [[nodiscard]] Direction direction(std::size_t i, std::ptrdiff_t sense) const
  {
    std::vector<Vector2d> points;
    for (std::size_t j = path_.on(i, sense); j != i && (points.empty() || away(i, j) <= reach_); j = path_.on(j, sense))
      points.push_back(path_.points[j]);
    if (points.size() < 3)
      points.insert(points.begin(), path_.points[i]);
    return line_direction(points);
  }

  static Direction line_direction(const std::vector<Vector2d>& points)
  {
    const Eigen::SelfAdjointEigenSolver<Eigen::Matrix2d> axes(scatter_of(points));
    const Vector2d d = axes.eigenvectors().col(1);
    return {d.dot(points.back() - points.front()) < 0.0 ? Vector2d(-d) : d, axes.eigenvalues()(1)};
  }

  const PointPath& path_;
  double reach_;
  std::vector<double> turns_;
  std::vector<double> variances_; // of a turn over that of the noise [m^-2]
};

} // namespace

std::vector<char> find_spikes(const PointPath& path)
{
  std::vector<char> spikes(path.size(), 0);
  if (path.size() < points_for_noise)
    return spikes;
  constexpr double least_turn = 60.0 * degree; // of a spike in all
  constexpr double calm = 0.35;                // of it without the point
  constexpr double calm_turn = 40.0 * degree;  // without the point: a corner remains one
  const double least_size = 6.0 * noise_of(path);
  for (std::size_t i = 0; i < path.size(); ++i)
  {
    const auto p = [&](std::ptrdiff_t k) { return path.points[path.on(i, k)]; };
    const auto turn_at = [](const Vector2d& a, const Vector2d& b, const Vector2d& c)
    { return std::abs(turn(b - a, c - b)); };
    const double with = turn_at(p(-2), p(-1), p(0)) + turn_at(p(-1), p(0), p(1)) + turn_at(p(0), p(1), p(2));
    const double without = turn_at(p(-2), p(-1), p(1)) + turn_at(p(-1), p(1), p(2));
    if (with > least_turn && without < std::min(calm * with, calm_turn) &&
        std::abs(deviation_from_neighbours(path, i)) > least_size)
      spikes[i] = 1;
  }
  return spikes;
}

std::vector<std::size_t> find_corners(const PointPath& path)
{
  const double step = median_step(path);
  const double noise = noise_of(path);
  const double reach = std::clamp(reach_over_noise * noise, step, most_reach * step);
  const Turns turns(path, reach);
  std::vector<std::size_t> corners;
  for (std::size_t i = 0; i < path.size(); ++i)
  {
    const double here = turns.at(i);
    if (here < std::max(least_corner, least_deviations * turns.deviation(i, noise)) || !turns.is_peak(i))
      continue;
    const double calmest = std::min(turns.beyond(i, 2.0 * reach, -1), turns.beyond(i, 2.0 * reach, 1));
    if (here > always_corner || calmest < calmer * here)
      corners.push_back(i);
  }
  return corners;
}

} // namespace plate
