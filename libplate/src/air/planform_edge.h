// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/air/cavity_space.h>
#include <plate/mesh/shell_mesh.h>

#include <array>
#include <vector>

namespace plate
{

/// The edge of a planform as the line through its nodes.
class PlanformEdge
{
public:
  /// @param planform  must outlive the edge
  explicit PlanformEdge(const ShellMesh& planform);

  /// The nearest place. Cost: linear in the number of edges.
  /// @throws InvalidInput if the point is further from the edge than a tenth of the planform's extent
  [[nodiscard]] CavitySpace::EdgePlace nearest(const Eigen::Vector2d& point) const;

private:
  const ShellMesh& planform_;
  std::vector<std::array<int, 2>> pieces_;
  double reach_; ///< [m]
};

} // namespace plate
