// SPDX-License-Identifier: MPL-2.0
#include "point_checks.h"

#include <plate/core/error.h>
#include <plate/mesh/planform_region.h>

#include <Eigen/Eigenvalues>

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

using Eigen::Vector2d;

// Arching templates at five stations of a body leave gaps of a fifth of its length: half of that is near enough.
constexpr double far_part = 0.12;   // distance to the nearest point that counts as a gap, over the region's diagonal
constexpr double most_gaps = 0.10;  // of the region's area
constexpr int probes_per_side = 48; // of the grid laid over the region
constexpr double line_part = 1e-3;  // scatter across a line over that along it, below which points make a line

bool in_one_line(std::span<const Vector2d> points)
{
  const Vector2d spread = Eigen::SelfAdjointEigenSolver<Eigen::Matrix2d>(scatter_of(points)).eigenvalues();
  return !(spread(0) > line_part * line_part * spread(1));
}

// Squared distances of a grid of probes from the nearest point, found by spreading out from cell to cell.
class GapGrid
{
public:
  GapGrid(const Box& box, std::span<const Vector2d> points)
      : low_(box.low), step_((box.high - box.low) / probes_per_side),
        nearest_(probes_per_side * probes_per_side, Vector2d(HUGE_VAL, HUGE_VAL))
  {
    for (const Vector2d& p : points)
    {
      const auto cell = [&](int axis)
      { return static_cast<int>(std::clamp((p(axis) - low_(axis)) / step_(axis), 0.0, probes_per_side - 1.0)); };
      offer(cell(0), cell(1), p);
    }
    constexpr int sweeps = 2;
    for (int k = 0; k < sweeps; ++k)
    {
      for (int i = 0; i < probes_per_side; ++i)
        for (int j = 0; j < probes_per_side; ++j)
          ask_neighbours(i, j);
      for (int i = probes_per_side; i-- > 0;)
        for (int j = probes_per_side; j-- > 0;)
          ask_neighbours(i, j);
    }
  }

  [[nodiscard]] Vector2d probe(int i, int j) const
  {
    return low_ + Vector2d((i + 0.5) * step_.x(), (j + 0.5) * step_.y());
  }
  [[nodiscard]] double distance(int i, int j) const { return (nearest_[index(i, j)] - probe(i, j)).norm(); }

private:
  [[nodiscard]] static std::size_t index(int i, int j) { return static_cast<std::size_t>(i * probes_per_side + j); }

  void offer(int i, int j, const Vector2d& p)
  {
    Vector2d& known = nearest_[index(i, j)];
    if ((p - probe(i, j)).squaredNorm() < (known - probe(i, j)).squaredNorm())
      known = p;
  }

  void ask_neighbours(int i, int j)
  {
    for (int a = std::max(i - 1, 0); a <= std::min(i + 1, probes_per_side - 1); ++a)
      for (int b = std::max(j - 1, 0); b <= std::min(j + 1, probes_per_side - 1); ++b)
        if (nearest_[index(a, b)].allFinite())
          offer(i, j, nearest_[index(a, b)]);
  }

  Vector2d low_;
  Vector2d step_;
  std::vector<Vector2d> nearest_;
};

} // namespace

Eigen::Matrix2d scatter_of(std::span<const Vector2d> points)
{
  Vector2d mean = Vector2d::Zero();
  for (const Vector2d& p : points)
    mean += p / static_cast<double>(points.size());
  Eigen::Matrix2d scatter = Eigen::Matrix2d::Zero();
  for (const Vector2d& p : points)
    scatter += (p - mean) * (p - mean).transpose();
  return scatter;
}

Box box_of(std::span<const Vector2d> points)
{
  Box box{Vector2d(HUGE_VAL, HUGE_VAL), Vector2d(-HUGE_VAL, -HUGE_VAL)};
  for (const Vector2d& p : points)
  {
    box.low = box.low.cwiseMin(p);
    box.high = box.high.cwiseMax(p);
  }
  return box;
}

std::vector<Vector2d> grid_inside(std::span<const Vector2d> polygon)
{
  constexpr int steps = 100;
  const Box box = box_of(polygon);
  std::vector<Vector2d> points(polygon.begin(), polygon.end());
  for (int i = 0; i <= steps; ++i)
    for (int j = 0; j <= steps; ++j)
      if (const Vector2d p = box.low + Vector2d(i, j).cwiseProduct(box.high - box.low) / steps;
          polygon_contains(polygon, p))
        points.push_back(p);
  return points;
}

std::string place_in_mm(const Vector2d& point)
{
  return message("x = ", point.x() * 1e3, ", y = ", point.y() * 1e3, " mm");
}

void check_points(std::span<const Vector2d> points, std::size_t least)
{
  if (points.size() < least)
    throw InvalidInput(message("points: at least ", least, " are needed; got ", points.size()));
  if (points.size() > most_points)
    throw InvalidInput(message("points: at most ", most_points, " are taken; got ", points.size(), "; thin them out"));
  for (std::size_t i = 0; i < points.size(); ++i)
    if (!points[i].allFinite())
      throw InvalidInput(message("points: number ", i + 1, " is not finite"));
  if (in_one_line(points))
    throw InvalidInput(message("points: all ", points.size(), " lie in one line, from ",
                               place_in_mm(box_of(points).low), " to ", place_in_mm(box_of(points).high),
                               "; measure to both sides of it as well"));
}

void check_coverage(std::span<const Vector2d> points, std::span<const Vector2d> region)
{
  const Box box = box_of(region);
  const GapGrid grid(box, points);
  const double far = far_part * box.diagonal();
  int inside = 0;
  int uncovered = 0;
  double furthest = 0.0;
  Vector2d gap = box.low;
  for (int i = 0; i < probes_per_side; ++i)
    for (int j = 0; j < probes_per_side; ++j)
    {
      if (!polygon_contains(region, grid.probe(i, j)))
        continue;
      ++inside;
      const double distance = grid.distance(i, j);
      uncovered += distance > far ? 1 : 0;
      if (distance > furthest)
      {
        furthest = distance;
        gap = grid.probe(i, j);
      }
    }
  if (uncovered > most_gaps * inside)
    throw InvalidInput(message("points: ", std::lround(100.0 * uncovered / inside),
                               " % of the plate lies further than ", far * 1e3,
                               " mm from every point, most of all near ", place_in_mm(gap),
                               "; measure there too, and see that the points are in mm with the origin on the centre "
                               "line at half the length"));
}

} // namespace plate
