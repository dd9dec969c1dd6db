// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/air/body_air.h>
#include <plate/assembly/body.h>
#include <plate/design/body_design.h>
#include <plate/meshes/body_mesh.h>

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
  BodyPlates plates;                        ///< the planforms that top and back stand on
  RibLayout ribs;                           ///< rows and bands of the ribs
  double size = 0.0;                        ///< edge length of the plates' meshes [m]
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

/// How a body moves to changed measures.
struct MoveBodyOptions
{
  bool keep_planforms = false; ///< outlines, holes, bar and ribs stand where they stood, seen from above
};

/// The same body with changed measures on the same mesh, moved: parts, triangles, joints and cavity stay, so that a
/// small change of the design is a small change of every result.
///
/// @throws InvalidInput      as build_body(), or if there are other holes, blocks or linings than before
/// @throws NumericalFailure  if a triangle turns inside out: the change is too great, build anew
[[nodiscard]] BodyModel move_body(const BodyModel& from, const BodyDesign& changed,
                                  const MoveBodyOptions& options = {});

/// The air of a body of this design.
[[nodiscard]] BodyAir body_air(const BodyModel& model, const BodyDesign& design);

} // namespace plate
