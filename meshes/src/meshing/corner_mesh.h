// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "boundary_stations.h"

#include <array>
#include <map>
#include <utility>
#include <vector>

namespace plate
{

/// The strip along one boundary edge, a map from (u, depth) in the unit square to the plane.
struct StripCell
{
  const CurvePiece* piece;
  double t0, t1;                  ///< parameters at its ends [-]
  Eigen::Vector2d inner0, inner1; ///< offset to the inner side in (left, tangent) at its ends [m]

  [[nodiscard]] Eigen::Vector2d at(double u, double depth) const;
};

/// An edge of the corner mesh that runs within a strip, in the strip's coordinates.
struct StripEdge
{
  std::size_t cell;
  double u0, depth0; ///< where the edge starts: at the corner with the smaller number
  double u1, depth1; ///< where it ends
};

/// Straight-sided triangles and what is needed to curve them.
struct CornerMesh
{
  std::vector<Eigen::Vector2d> nodes;            ///< [m]
  std::vector<std::array<int, 3>> triangles;     ///< counter-clockwise
  std::vector<StripCell> cells;
  std::map<std::pair<int, int>, StripEdge> curved; ///< key: corners of the edge, smaller first
  std::vector<std::vector<std::array<int, 2>>> loop_edges; ///< per loop, in the order of the stations
  std::vector<std::vector<int>> inner_loops;     ///< per loop: the polygon inside the strips
  std::vector<std::vector<int>> bar_loops;       ///< per bar: the polygon around it, clockwise
  std::vector<std::array<int, 2>> lines;         ///< edges that the inside shall have
  std::vector<int> bar_triangles;                ///< indices of triangles under the bar
};

/// Nodes on the boundary and the strips' inner ones, triangles in the strips.
[[nodiscard]] CornerMesh strip_mesh(const std::vector<std::vector<BoundaryStation>>& stations,
                                    const std::vector<std::vector<BoundaryNode>>& nodes,
                                    const PlateBoundary& boundary);

/// Cubic triangles over the corner mesh: edges in the strips on curves parallel to the boundary, all others straight.
void raise_to_cubic(const CornerMesh& corners, PlanformMesh& mesh);

} // namespace plate
