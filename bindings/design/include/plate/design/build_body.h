// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/air/cavity_mesh.h>
#include <plate/air/hole_flow.h>
#include <plate/assembly/body.h>
#include <plate/design/body_design.h>

#include <cstddef>
#include <optional>
#include <vector>

namespace plate
{

/// What the blocks at both ends are glued to: nodes of the part that stands for them.
struct EndBlocks
{
  std::size_t part; ///< index into Body::parts
  std::vector<int> neck;
  std::vector<int> lower;
};

/// A body ready to be assembled. Axes: those of the top; its rim lies at z = 0, the back below.
struct BodyModel
{
  static constexpr std::size_t top = 0;  ///< index into Body::parts
  static constexpr std::size_t back = 1; ///< index into Body::parts
  Body body;         ///< parts "top", "back", then "ribs", "linings" and "blocks": ribs alone and where these back them
  CavityMesh cavity; ///< over the planform within the ribs; its boundary is one group, "ribs"
  std::vector<HoleOutline> holes;           ///< of the top, in its axes
  std::optional<EndBlocks> end_blocks = {}; ///< none where they have no width
  double solids = 0.0;                      ///< volume of the cavity that linings and blocks take [m3]
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
