// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/mesh/shell_mesh.h>

#include <Eigen/Core>

#include <array>
#include <span>
#include <vector>

namespace plate
{

/// A curved mesh cut into small straight triangles with shared corners and edges, as contouring needs it.
struct RefinedSurface
{
  /// A directed piece of the boundary with the plate to its left.
  struct BoundaryEdge
  {
    int from = 0;     ///< point
    int to = 0;       ///< point
    int edge = 0;     ///< number of the edge
    int triangle = 0; ///< small triangle it belongs to
    int side = 0;     ///< its side in that triangle
  };
  /// Where a point lies in the mesh.
  struct Site
  {
    int triangle = 0;   ///< of the mesh
    Eigen::Vector2d rs; ///< in that triangle [-]
  };

  const ShellMesh& mesh;                          ///< must outlive the surface
  int divisions = 0;                              ///< each edge of the mesh is cut into so many pieces
  std::vector<Eigen::Vector2d> points = {};       ///< in the plane of the rim (x, y) [m]
  std::vector<Site> sites = {};                   ///< (num_points)
  std::vector<std::array<int, 3>> triangles = {}; ///< points, counter-clockwise from outside
  std::vector<std::array<int, 3>> edges = {};     ///< for each triangle the edges corner k to corner k + 1
  std::vector<BoundaryEdge> boundary = {};
  std::vector<std::array<Eigen::Vector2d, 3>> pattern =
      {}; ///< corners (r, s) of the small triangles of one triangle [-]

  [[nodiscard]] int parent(int triangle) const { return triangle / (divisions * divisions); }
  [[nodiscard]] const std::array<Eigen::Vector2d, 3>& corners(int triangle) const
  {
    return pattern[static_cast<std::size_t>(triangle % (divisions * divisions))];
  }
  /// A nodal field of the mesh at (r, s) of one of its triangles [unit of the field].
  [[nodiscard]] double value(std::span<const double> nodal, int mesh_triangle, const Eigen::Vector2d& rs) const;
  /// Place in the plane of the rim at (r, s) of a triangle of the mesh [m].
  [[nodiscard]] Eigen::Vector2d place(int mesh_triangle, const Eigen::Vector2d& rs) const;
};

/// Cuts each triangle of the mesh into divisions² small ones.
/// @throws InvalidInput if the mesh is empty, or a triangle uses a node that does not exist
[[nodiscard]] RefinedSurface refine(const ShellMesh& mesh, int divisions);

/// Divisions for small triangles of about the mesh's extent divided by `pieces`; a multiple of 3: nodes are points.
[[nodiscard]] int drawing_divisions(const ShellMesh& mesh, int pieces);

/// How a nodal field is drawn between its nodes.
enum class Interpolation
{
  cubic,       ///< as the element has it: for mode shapes
  within_nodes ///< cubic, but not beyond the nearest nodes: fields with kinks and plateaus do not ring
};

/// A nodal field of the mesh at the points of the surface [unit of the field].
[[nodiscard]] std::vector<double> sample(const RefinedSurface& surface, std::span<const double> nodal,
                                         Interpolation interpolation);

} // namespace plate
