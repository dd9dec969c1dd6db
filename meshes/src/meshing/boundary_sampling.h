// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/plate_geometry.h>

#include <vector>

namespace plate
{

/// A point of the finely sampled boundary.
struct BoundarySample
{
  std::size_t loop;
  std::size_t piece;
  double t;                 ///< parameter on the piece [-]
  Eigen::Vector2d position; ///< [m]
  double step;              ///< arc length to the next sample of the piece [m]
  double size;              ///< edge length wanted here [m]
};

/// Distance from a point along a direction to the next edge of the plate or side of the bar.
class EdgeDistance
{
public:
  explicit EdgeDistance(const PlateGeometry& geometry, const PlateBoundary& boundary);

  /// Distance along `direction` [m]. What a ray just misses sees this place itself with its own ray.
  [[nodiscard]] double gap(const Eigen::Vector2d& from, const Eigen::Vector2d& direction) const;

private:
  struct Segment
  {
    Eigen::Vector2d a, b; // [m]
  };
  [[nodiscard]] double along(const Eigen::Vector2d& from, const Eigen::Vector2d& direction) const;

  std::vector<Segment> segments_;
};

/// A place where the edges found were too long.
struct FinerPlace
{
  Eigen::Vector2d position; ///< [m]
  double reach;             ///< beyond the nearest boundary: its edges so far count as too long [m]
};

/// Samples of all loops in order, with an edge length that follows the curvature and the gap to the next edge and grows
/// gently with the distance from places that need small edges.
///
/// @param rounds  places of each attempt so far; every attempt halves the edges near its places
[[nodiscard]] std::vector<BoundarySample> sample_boundary(const PlateBoundary& boundary, const EdgeDistance& edges,
                                                          double size,
                                                          const std::vector<std::vector<FinerPlace>>& rounds = {});

/// Edge length wanted at a point inside the plate, from the sizes on the boundary.
[[nodiscard]] double size_at(const std::vector<BoundarySample>& samples, const Eigen::Vector2d& point, double size);

} // namespace plate
