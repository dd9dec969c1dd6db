// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/mesh/shell_mesh.h>

#include <Eigen/Geometry>

#include <optional>
#include <vector>

namespace plate
{

/// A place in a mesh.
struct MeshPoint
{
  std::size_t triangle;
  double xi;  ///< natural coordinates in the triangle [-]
  double eta; ///< [-]
};

/// Triangle and natural coordinates over a point of the planform.
///
/// A point within a thousandth of a triangle's size beside the mesh counts as on its edge; nothing for points further
/// out or in a hole. Cost: linear in the number of triangles; for many points see PointLocator.
[[nodiscard]] std::optional<MeshPoint> locate(const ShellMesh& mesh, const Eigen::Vector2d& point);

/// Finds many points of one mesh: locate() with the triangles sorted into a grid once.
class PointLocator
{
public:
  /// @param mesh  must outlive the locator
  explicit PointLocator(const ShellMesh& mesh);

  /// As plate::locate(). Cost: a few triangles, whatever their number.
  [[nodiscard]] std::optional<MeshPoint> locate(const Eigen::Vector2d& point) const;

private:
  /// Column and row of the grid, those of the nearest cell for a point beside it.
  [[nodiscard]] Eigen::Vector2i cell_of(const Eigen::Vector2d& point) const;

  const ShellMesh& mesh_;
  std::vector<Eigen::AlignedBox2d> boxes_; ///< of the triangles, with their curved sides
  Eigen::AlignedBox2d grid_;
  Eigen::Vector2i num_cells_;
  std::vector<std::vector<std::size_t>> triangles_; ///< that reach into each cell, ascending; rows of columns
};

} // namespace plate
