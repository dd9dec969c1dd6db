// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/elements/bar.h>
#include <plate/elements/shell_triangle.h>
#include <plate/mesh/shell_mesh.h>

#include <memory>
#include <string>
#include <vector>

namespace plate
{

/// How an edge is held.
enum class EdgeSupport
{
  free,
  rest,   ///< displacement along z held
  hinged, ///< displacements x, y, z held, rotations free
  clamped ///< displacements and rotations held
};

/// A support along one boundary group of the mesh.
struct SupportedEdge
{
  std::string group; ///< name of a ShellMesh::boundary group
  EdgeSupport support = EdgeSupport::free;
};

/// Directions that one ply of the laminate takes instead of its angle, e.g. those it was draped to.
struct PlyDirections
{
  std::size_t ply = 0; ///< index into the laminate
  /// (num_nodes) cos and sin of twice the angle from the reference axis [-].
  std::vector<Eigen::Vector2d> double_angle;
};

/// A small body stuck on the plate, without extent: it moves with the mid-surface.
struct PointMass
{
  Eigen::Vector2d at; ///< in the planform [m]
  double mass;        ///< [kg]
};

/// A plate ready to be assembled: mesh, what it is made of, how it is held.
struct Model
{
  ShellMesh mesh;
  ShellMaterial material;
  std::vector<Bar> bars; ///< one per ShellMesh::bars
  std::vector<SupportedEdge> supports;
  std::vector<Patch> patches = {}; ///< the first lie next to the laminate
  std::vector<PlyDirections> directions = {};
  std::vector<PointMass> masses = {};
  double air_density = 0.0; ///< of the air that moves with both faces; 0 in vacuo [kg/m3]
};

/// Checks a model for what assembly relies on: sizes, indices, unit normals, positive thickness, known edge groups.
///
/// @throws InvalidInput naming the first offence
void check_model(const Model& model);

/// Bar and patches of one triangle.
struct TriangleCover
{
  int bar = -1;                                       ///< index into Model::bars, -1 for none
  std::vector<int> patches = {};                      ///< indices into Model::patches
  bool patch_edge = false;                            ///< some patch ends within the triangle
  std::shared_ptr<const BarTorsion> bar_torsion = {}; ///< of the bar, shared by its triangles
};

/// For each triangle what covers it.
///
/// A patch counts as ending in each triangle whose box its edge passes through: some more than there are, none missed.
[[nodiscard]] std::vector<TriangleCover> triangle_covers(const Model& model);

/// One triangle as the element kernels take it.
struct ElementInput
{
  ShellTriangleNodes nodes;
  TriangleParts parts; ///< points into the model
};

/// Collects the input of one element.
[[nodiscard]] ElementInput element_input(const Model& model, std::size_t triangle, const TriangleCover& cover);

} // namespace plate
