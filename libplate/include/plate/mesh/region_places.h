// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/mesh/locate.h>
#include <plate/mesh/planform_region.h>

#include <Eigen/Core>

#include <vector>

namespace plate
{

/// A place in a mesh with its share of something spread over many.
struct SharedPlace
{
  MeshPoint point;
  double share; ///< [-]; those of a list add up to one
};

/// Evenly spread places of equal share over the part of a region that lies on the plate, about 200 for an ellipse.
///
/// @throws InvalidInput if the region lies beside the plate or in a hole
[[nodiscard]] std::vector<SharedPlace> places_in(const ShellMesh& mesh, const PlanformRegion& region);

/// Evenly spread places of equal share along the part of a straight line that lies on the plate.
///
/// @throws InvalidInput if the line lies beside the plate or in a hole
[[nodiscard]] std::vector<SharedPlace> places_along(const ShellMesh& mesh, const Eigen::Vector2d& from,
                                                    const Eigen::Vector2d& to);

} // namespace plate
