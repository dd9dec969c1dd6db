// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/body.h>
#include <plate/design/body_design.h>

#include <Eigen/Core>

#include <cstddef>

namespace plate
{

/// The space inside a body over the planform within the ribs, in the axes of the body. Holes are not cut out of it.
struct Cavity
{
  ShellMesh planform;   ///< seen from above, flat at z = 0; its boundary is one group, "ribs"
  Eigen::VectorXd back; ///< z of the inner face of the back at the nodes, (num_nodes) [m]
  Eigen::VectorXd top;  ///< z of the inner face of the top at the nodes, (num_nodes) [m]
};

/// Volume of a cavity [m3].
[[nodiscard]] double volume(const Cavity& cavity);

/// A body ready to be assembled. Axes: those of the top; its rim lies at z = 0, the back below.
struct BodyModel
{
  static constexpr std::size_t top = 0;  ///< index into Body::parts
  static constexpr std::size_t back = 1; ///< index into Body::parts
  Body body; ///< parts "top", "back", then "ribs", "linings" and "blocks": ribs alone and where these back them
  Cavity cavity;
};

/// The model of a body on meshes of its own, in vacuo.
///
/// Plates stand over the ribs as designed; ribs are glued to them along a line in the middle of their thickness. Walls
/// meet at mid-surfaces, so ribs reach half the edge of each plate too far: 8 % of a viola's. Blocks and linings
/// thicken the ribs from inside. The bridge is half of its mass on either foot, a neck a
/// rigid body on the block at its end.
/// A measured back takes the mirror image of the top's measured outline.
/// @throws InvalidInput      if the outlines of both plates differ, or post or bridge have no place
/// @throws NumericalFailure  if a plate cannot be meshed
[[nodiscard]] BodyModel build_body(const BodyDesign& design);

} // namespace plate
