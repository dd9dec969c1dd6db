// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "boundary_sampling.h"

#include <plate/meshes/mesher.h>

#include <vector>

namespace plate
{

/// Width of the strips where nothing is in their way [m].
class FullStripWidth
{
public:
  FullStripWidth(const PlateGeometry& geometry, const MeshOptions& options);
  [[nodiscard]] double at(const Eigen::Vector2d& point) const;

private:
  ThicknessField thickness_;
  double fixed_; // 0: from the thickness [m]
};

/// Corner nodes on the boundary loops: every joint of pieces, and between them as the sizes ask; strips not yet set.
[[nodiscard]] std::vector<std::vector<BoundaryStation>> place_stations(const PlateBoundary& boundary,
                                                                       const std::vector<BoundarySample>& samples);

/// Sets the strips' widths: a third of the gap to the next edge at most, tapering to nothing at tips and nicks.
void set_strips(std::vector<std::vector<BoundaryStation>>& stations, const PlateBoundary& boundary,
                const EdgeDistance& edges, const FullStripWidth& full);

/// A boundary node in the plane.
struct BoundaryNode
{
  Eigen::Vector2d position; ///< [m]
  Eigen::Vector2d offset;   ///< from the node to the inner side of the strip; zero without strip [m]
};

/// Boundary nodes with their strips, per loop as the stations.
[[nodiscard]] std::vector<std::vector<BoundaryNode>>
boundary_nodes(const std::vector<std::vector<BoundaryStation>>& stations, const PlateBoundary& boundary,
               const FullStripWidth& full);

} // namespace plate
