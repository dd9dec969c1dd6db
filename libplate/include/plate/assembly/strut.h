// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/mesh/planform_region.h>

#include <Eigen/Core>

#include <array>
#include <cstddef>
#include <vector>

namespace plate
{

/// Where a strut stands on a part. It moves with the mean displacement and the mean rotation of the mid-surface there.
struct StrutFoot
{
  std::size_t part;      ///< index into Body::parts
  PlanformRegion region; ///< contact area, in the planform of that part
};

/// A straight round post between two walls, e.g. a soundpost: stretches, bends, shears and twists as a beam between the
/// middles of its feet, which are glued. Its length is taken from mid-surface to mid-surface.
struct Strut
{
  std::array<StrutFoot, 2> feet;
  double E;        ///< along it [Pa]
  double G;        ///< shear across it [Pa]
  double density;  ///< [kg/m3]
  double diameter; ///< [m]
};

/// A rigid body fixed to nodes of a part, e.g. a neck: it moves with their mean displacement and mean rotation.
struct FixedMass
{
  std::size_t part;        ///< index into Body::parts
  std::vector<int> nodes;  ///< of that part, not all on one line
  double mass;             ///< [kg]
  Eigen::Vector3d centre;  ///< of gravity, in the axes of the body [m]
  Eigen::Matrix3d inertia; ///< about its centre of gravity [kg m2]
};

} // namespace plate
