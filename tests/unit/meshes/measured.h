// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/curve.h>

#include <Eigen/Core>

#include <cstdint>
#include <random>
#include <vector>

namespace plate::test
{

/// Seeded random numbers, the same on every machine.
class Scatter
{
public:
  explicit Scatter(std::uint32_t seed) : random_(seed) {}

  /// Evenly spread between two limits.
  double uniform(double low, double high) { return low + (high - low) * static_cast<double>(random_()) / 4294967296.0; }

  /// Normal with standard deviation 1: the sum of twelve even numbers.
  double normal()
  {
    double sum = -6.0;
    for (int k = 0; k < 12; ++k)
      sum += uniform(0.0, 1.0);
    return sum;
  }

private:
  std::mt19937 random_;
};

/// Points along a loop as one measures them: all corners, and between them about every `step` [m].
struct MeasuredLoop
{
  std::vector<Eigen::Vector2d> points; ///< [m]
  std::vector<std::size_t> corners;    ///< indices of the points at corners
};

/// Whether a point lies inside a closed polygon (even-odd rule).
inline bool is_inside(const std::vector<Eigen::Vector2d>& polygon, const Eigen::Vector2d& p)
{
  bool inside = false;
  for (std::size_t i = 0, j = polygon.size() - 1; i < polygon.size(); j = i++)
  {
    const Eigen::Vector2d &a = polygon[i], &b = polygon[j];
    if ((a.y() > p.y()) != (b.y() > p.y()) && p.x() < a.x() + (b.x() - a.x()) * (p.y() - a.y()) / (b.y() - a.y()))
      inside = !inside;
  }
  return inside;
}

/// @param noise  standard deviation of each coordinate [m]
inline MeasuredLoop measure(const CurveLoop& loop, double step, double noise, Scatter& scatter)
{
  MeasuredLoop out;
  double since = step; // way since the last point [m]
  Eigen::Vector2d before = evaluate(loop.pieces.front(), 0.0).position;
  for (std::size_t p = 0; p < loop.pieces.size(); ++p)
    for (int k = 0; k < 500; ++k)
    {
      const Eigen::Vector2d here = evaluate(loop.pieces[p], k / 500.0).position;
      since += (here - before).norm();
      before = here;
      const bool corner = k == 0 && is_corner(loop, p);
      if (!corner && since < step)
        continue;
      if (corner && since < 0.3 * step && !out.points.empty()) // the corner itself instead of a point right before it
        out.points.pop_back();
      since = 0.0;
      if (corner)
        out.corners.push_back(out.points.size());
      out.points.push_back(here + noise * Eigen::Vector2d(scatter.normal(), scatter.normal()));
    }
  return out;
}

} // namespace plate::test
