// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>

#include <cmath>
#include <unordered_map>
#include <vector>

namespace plate
{

/// Finds whether any of many points lies near a place, by sorting them into square cells.
class NearbyPoints
{
public:
  NearbyPoints(const std::vector<Eigen::Vector2d>& points, double cell) : cell_(cell)
  {
    for (const Eigen::Vector2d& point : points)
      cells_[key(index(point[0]), index(point[1]))].push_back(point);
  }

  /// Distances up to the size of a cell only.
  bool any_within(const Eigen::Vector2d& place, double distance) const
  {
    for (const int i : {-1, 0, 1})
      for (const int j : {-1, 0, 1})
      {
        const auto found = cells_.find(key(index(place[0]) + i, index(place[1]) + j));
        if (found == cells_.end())
          continue;
        for (const Eigen::Vector2d& point : found->second)
          if ((point - place).squaredNorm() < distance * distance)
            return true;
      }
    return false;
  }

private:
  long index(double coordinate) const { return std::lround(std::floor(coordinate / cell_)); }
  static long key(long i, long j) { return i * 1000003L + j; }

  double cell_;
  std::unordered_map<long, std::vector<Eigen::Vector2d>> cells_;
};

} // namespace plate
