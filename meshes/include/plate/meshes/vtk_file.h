// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/mesh/shell_mesh.h>

#include <Eigen/Core>

#include <filesystem>
#include <string>
#include <vector>

namespace plate
{

/// A named value at each node; the name carries the unit, e.g. "thickness mm".
struct NodalScalars
{
  std::string name;
  std::vector<double> values; ///< (num_nodes) [as named]
};

/// A named vector at each node, e.g. a fibre direction or the mode shape "mode 01 61.2 Hz M1".
struct NodalVectors
{
  std::string name;
  std::vector<Eigen::Vector3d> values; ///< (num_nodes), plate axes [as named]
};

/// A named value for each triangle, e.g. 1 under the bar and 0 elsewhere.
struct CellScalars
{
  std::string name;
  std::vector<double> values; ///< (num_triangles) [as named]
};

/// What a VTK file holds beside the mesh.
struct VtkFields
{
  std::vector<NodalScalars> nodal_scalars = {};
  std::vector<NodalVectors> nodal_vectors = {};
  std::vector<CellScalars> cell_scalars = {};
};

/// Marks the triangles under a bar with 1, all others with 0; all 0 without a bar.
[[nodiscard]] CellScalars bar_cells(const ShellMesh& mesh, std::string name = "bar");

/// Writes a VTK XML unstructured grid of cubic Lagrange triangles, so that a curved mesh stays curved.
///
/// Points are doubles in metres, in the mesh's order. The file appears complete or not at all, and the same input
/// gives the same bytes.
/// @throws InvalidInput if the mesh is empty, a field has the wrong length, no name, a name used twice or a value
///         that is not finite
/// @throws IoError if the file cannot be written
/// @source cell type VTK_LAGRANGE_TRIANGLE; pinned by tests/unit/pictures/vtk_file_test.cpp
void write_vtu(const std::filesystem::path& path, const ShellMesh& mesh, const VtkFields& fields);

} // namespace plate
