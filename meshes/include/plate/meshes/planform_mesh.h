// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/mesh/shell_mesh.h>

#include <Eigen/Core>

#include <array>
#include <vector>

namespace plate
{

/// What a mesh should be like.
struct MeshOptions
{
  /// Edge length inside the plate [m]; 0: a thirty-second of the length of a body, or of twice the width if that is less
  /// (about 10 600 nodes on a viola top with f-holes and bar, where the lowest twelve modes of carved spruce are within
  /// 0.07 %, those of a laminate within 0.02 %, of those at a third of that size).
  double size = 0.0;
  /// Greatest width of the strip of small elements along every free edge [m]; 0: 1.2 times the thickness there.
  double strip_width = 0.0;
};

/// A corner node on a boundary curve, and the strip there.
struct BoundaryStation
{
  int piece;          ///< of its loop
  double t;           ///< parameter on the piece [-]
  double strip_share; ///< width of the strip as part of its full width; 0: no strip here [-]
};

/// Rows of mesh lines across a bar: its lower part from the end to the apex, then its upper part.
struct BarRows
{
  std::vector<double> lower; ///< ascending from 0 (lower end) to 1 (apex) [-]
  std::vector<double> upper; ///< ascending from 0 (apex) to 1 (upper end); empty if the apex is no inner point [-]
};

/// Planform of a mesh of cubic triangles, and how it hangs on the geometry.
struct PlanformMesh
{
  std::vector<Eigen::Vector2d> nodes;                                        ///< corners first [m]
  std::vector<std::array<int, ShellMesh::nodes_per_triangle>> triangles;     ///< node order as in ShellMesh
  std::vector<EdgeGroup> boundary;                                           ///< as in ShellMesh
  std::vector<BarFootprint> bars;                                            ///< as in ShellMesh
  MeshOptions options;                                                       ///< it was made with
  std::size_t outline_kind = 0;                                              ///< Outline::index() of its geometry
  int num_corners = 0; ///< corner nodes: those on the boundary, the strips' inner ones, the bar's, then the free ones
  std::vector<std::vector<BoundaryStation>> stations; ///< per loop, in the order of the boundary corner nodes
  std::vector<BarRows> bar_rows;                      ///< none or one per bar
};

/// Figures about a mesh.
struct MeshQuality
{
  double least_jacobian;  ///< least ratio of smallest to greatest Jacobian within a triangle [-]
  double least_angle;     ///< of all straight-sided triangles [rad]
  double shortest_edge;   ///< between corners [m]
  double longest_edge;    ///< between corners [m]
  double area;            ///< of the planform [m^2]
  int num_nodes;
  int num_triangles;
};

/// @return figures about the planform; a triangle turned inside out shows as a Jacobian ratio of zero or less
[[nodiscard]] MeshQuality mesh_quality(const PlanformMesh& mesh);

} // namespace plate
