// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/mesh/shell_mesh.h>

#include <Eigen/Core>
#include <Eigen/SparseCore>

#include <array>
#include <vector>

namespace plate
{

/// Flat triangles that stand for the mid-surface of a plate.
struct PanelMesh
{
  std::vector<Eigen::Vector3d> vertices;     ///< [m]
  std::vector<std::array<int, 3>> triangles; ///< counter-clockwise seen from outside
};

/// Whether each vertex lies on the edge of an outline or a hole.
[[nodiscard]] std::vector<bool> edge_vertices(const PanelMesh& panels);

/// Nine panels between the nodes of each triangle; vertices are the nodes.
[[nodiscard]] PanelMesh panels_of(const ShellMesh& mesh);

/// A third of the panels around each vertex, (vertices) [m2].
///
/// As weights of nodal values they serve functions that bend at any vertex; the weights of the cubic triangle, exact
/// for smooth ones, do not: they differ from node to node by a factor of 13.
[[nodiscard]] Eigen::VectorXd vertex_areas(const PanelMesh& panels);

/// Takes vertices out, one by one, until at most `most` triangles are left or no vertex can go without harm.
///
/// Panels grow with the distance from the edge, near which the pressure varies as its square root. Vertices stay where
/// they were; no triangle turns over or degenerates; edges keep their course to a few hundredths of a panel.
[[nodiscard]] PanelMesh coarsened(const PanelMesh& fine, std::size_t most);

/// Weights of the vertices at points near the surface, linear in the nearest panel: (points, vertices).
[[nodiscard]] Eigen::SparseMatrix<double, Eigen::RowMajor> interpolation(const PanelMesh& panels,
                                                                         const std::vector<Eigen::Vector3d>& points);

} // namespace plate
