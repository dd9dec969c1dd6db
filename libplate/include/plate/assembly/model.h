// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/elements/bar.h>
#include <plate/elements/shell_triangle.h>
#include <plate/mesh/shell_mesh.h>

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

/// A plate ready to be assembled: mesh, what it is made of, how it is held.
struct Model
{
  ShellMesh mesh;
  ShellMaterial material;
  std::vector<Bar> bars; ///< one per ShellMesh::bars
  std::vector<SupportedEdge> supports;
};

/// Checks a model for what assembly relies on: sizes, indices, unit normals, positive thickness, known edge groups.
///
/// @throws InvalidInput naming the first offence
void check_model(const Model& model);

/// Nodes and bar of one triangle as the element kernels take them.
struct ElementInput
{
  ShellTriangleNodes nodes;
  const Bar* bar = nullptr; ///< lives in the model
};

/// For each triangle the index of the bar glued under it, -1 for none.
[[nodiscard]] std::vector<int> bar_of_triangle(const ShellMesh& mesh);

/// Collects the input of one element.
///
/// @param bar  index of the bar under the triangle, -1 for none
[[nodiscard]] ElementInput element_input(const Model& model, std::size_t triangle, int bar);

} // namespace plate
