// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/mesher.h>

#include <Eigen/Core>

#include <array>
#include <vector>

namespace plate
{

/// Top and back of a body, each in axes of its own.
struct BodyPlates
{
  PlanformMesh top;
  PlanformMesh back; ///< its nodes along outline and rib line are the mirror image (y -> -y) of the top's
};

/// Meshes of two plates to be joined by ribs. The strips along their edges are as wide as the plates stand over the
/// ribs, so that a line of mesh edges runs where the ribs stand; it meets the outline where strips end, in sharp tips.
///
/// @param overhang  of the plates over the middle of the ribs, positive [m]
/// @param size      edge length inside both plates [m]; 0: chosen
/// @throws InvalidInput as mesh_planform(), or if the outline of the back is not the mirror image of the top's
[[nodiscard]] BodyPlates mesh_body_plates(const PlateGeometry& top, const PlateGeometry& back, double overhang,
                                          double size = 0.0);

/// The same meshes moved to changed plates, as move_planform() does it with one.
///
/// @param overhang  of the changed body [m]
/// @throws InvalidInput      as move_planform() and mesh_body_plates()
/// @throws NumericalFailure  as move_planform()
[[nodiscard]] BodyPlates move_body_plates(const BodyPlates& plates, const PlateGeometry& top, const PlateGeometry& back,
                                          double overhang);

/// Where ribs stand on a plate: node indices of the cubic edges inside the strip along the outline, in its order.
[[nodiscard]] std::vector<std::array<int, 4>> rib_line(const PlanformMesh& mesh);

/// One edge of a rib where it is glued to a plate: end, two inner nodes, end, in the axes of the body [m].
using RibEdge = std::array<Eigen::Vector3d, 4>;

/// What backs a part of the ribs.
enum class RibBand
{
  plain,
  lining,
  end_block,
  corner_block
};

/// Measures of ribs and of what is glued inside them.
struct RibMeasures
{
  double size;               ///< length of the plates' edges; ribs have rows of at most twice that [m]
  double lining = 0.0;       ///< height of the linings at both plates; 0: none [m]
  double end_block = 0.0;    ///< width of the blocks at neck and lower end, across the body; 0: none [m]
  double corner_block = 0.0; ///< how far a corner block reaches along the ribs from its corner; 0: none [m]
};

/// The ribs with the same backing.
struct RibPiece
{
  RibBand band;
  ShellMesh mesh; ///< in the axes of the body, thickness 1 m at all nodes: to be set; no boundary groups
  /// Length that the blocks of the piece are to back over the length of its columns: they end within some [-].
  double backing_share = 1.0;
};

/// How ribs are cut into rows and bands: what stays when their measures change a little.
struct RibLayout
{
  std::vector<bool> end_blocks;    ///< which edges end blocks stand behind
  std::vector<bool> corner_blocks; ///< which edges corner blocks stand behind
  int plain_rows;                  ///< between the linings
};

/// The layout that fits the measures best.
///
/// @param lower,upper  edges of the same ribs at back and top, counter-clockwise seen from above the top
/// @throws InvalidInput if the edges differ in number
[[nodiscard]] RibLayout rib_layout(const std::vector<RibEdge>& lower, const std::vector<RibEdge>& upper,
                                   const RibMeasures& measures);

/// Ribs as walls ruled between the edges of two plates; normals outward, seen in the plane of the rim.
///
/// Nodes of different pieces, and of one piece on both sides of a corner, lie at the same places and are to be glued.
/// @param lower,upper  as for the layout
/// @throws InvalidInput if the edges do not fit the layout, or linings leave nothing of the ribs
[[nodiscard]] std::vector<RibPiece> rib_meshes(const std::vector<RibEdge>& lower, const std::vector<RibEdge>& upper,
                                               const RibMeasures& measures, const RibLayout& layout);

} // namespace plate
