// SPDX-License-Identifier: MPL-2.0
#include <plate/air/cavity_walls.h>

#include "mesh/triangle_nodes.h"
#include "planform_edge.h"

#include <plate/core/error.h>
#include <plate/elements/cubic_triangle.h>
#include <plate/elements/quadrature.h>

#include <Eigen/Geometry>
#include <Eigen/SparseCore>

#include <array>
#include <vector>

namespace plate
{
namespace
{

/// A point of a wall with its area vector over the parameters of the triangle.
struct WallPoint
{
  Eigen::Vector3d at;
  Eigen::Vector3d area_vector; ///< along the normal of the mesh
  CubicTriangle::Vector N;
};

WallPoint wall_point(const ShellMesh& mesh, std::size_t triangle, double xi, double eta)
{
  const Eigen::Matrix<double, 3, CubicTriangle::num_nodes> X = nodes_of(mesh, triangle);
  const Eigen::Matrix<double, 3, 2> tangents = X * CubicTriangle::gradient(xi, eta);
  const CubicTriangle::Vector N = CubicTriangle::shape(xi, eta);
  return {.at = X * N, .area_vector = tangents.col(0).cross(tangents.col(1)), .N = N};
}

/// The mesh in the axes of the cavity.
ShellMesh placed(const CavityWall& wall)
{
  ShellMesh mesh = *wall.mesh;
  for (Eigen::Vector3d& node : mesh.nodes)
    node = wall.placement * node;
  return mesh; // normals are not used
}

using RowMatrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

/// Sums up loads; rows are contiguous, as all motions are added at a time.
class Loads
{
public:
  Loads(const CavitySpace& space, const CavityWall& wall, const Eigen::MatrixXd& u)
      : triangles_(wall.mesh->triangles), to_wall_(wall.placement.linear().transpose()), u_(u),
        sum_(RowMatrix::Zero(space.num_unknowns(), u.cols()))
  {
  }

  /// Adds flow . (displacement of the wall there) with the pressures of a place.
  void add(const Eigen::SparseVector<double>& pressures, std::size_t triangle, const WallPoint& point,
           const Eigen::Vector3d& flow)
  {
    const Eigen::Vector3d along = to_wall_ * flow; // in the axes of u
    Eigen::RowVectorXd moved = Eigen::RowVectorXd::Zero(u_.cols());
    for (int i = 0; i < CubicTriangle::num_nodes; ++i)
      for (int k = 0; k < 3; ++k)
        moved += point.N(i) * along(k) * u_.row(3 * triangles_[triangle][static_cast<std::size_t>(i)] + k);
    for (Eigen::SparseVector<double>::InnerIterator it(pressures); it; ++it)
      sum_.row(it.index()) += it.value() * moved;
  }

  [[nodiscard]] Eigen::MatrixXd sum() const { return sum_; }

private:
  const std::vector<std::array<int, ShellMesh::nodes_per_triangle>>& triangles_;
  Eigen::Matrix3d to_wall_;
  RowMatrix u_;
  RowMatrix sum_;
};

/// Sums up forces on nodes, the transpose of what Loads does.
class Forces
{
public:
  Forces(const CavityWall& wall, const Eigen::MatrixXd& pressures)
      : triangles_(wall.mesh->triangles), to_wall_(wall.placement.linear().transpose()), pressures_(pressures),
        sum_(RowMatrix::Zero(3 * static_cast<Eigen::Index>(wall.mesh->nodes.size()), pressures.cols()))
  {
  }

  /// Adds the pressure of a place times flow to the nodes that move there.
  void add(const Eigen::SparseVector<double>& pressures, std::size_t triangle, const WallPoint& point,
           const Eigen::Vector3d& flow)
  {
    const Eigen::Vector3d along = to_wall_ * flow;
    Eigen::RowVectorXd pressure = Eigen::RowVectorXd::Zero(pressures_.cols());
    for (Eigen::SparseVector<double>::InnerIterator it(pressures); it; ++it)
      pressure += it.value() * pressures_.row(it.index());
    for (int i = 0; i < CubicTriangle::num_nodes; ++i)
      for (int k = 0; k < 3; ++k)
        sum_.row(3 * triangles_[triangle][static_cast<std::size_t>(i)] + k) += point.N(i) * along(k) * pressure;
  }

  [[nodiscard]] Eigen::MatrixXd sum() const { return sum_; }

private:
  const std::vector<std::array<int, ShellMesh::nodes_per_triangle>>& triangles_;
  Eigen::Matrix3d to_wall_;
  RowMatrix pressures_;
  RowMatrix sum_;
};

/// Integrated over the planform: the same area for top and back, whatever their meshes and their overhang.
template <class Sum>
void add_plate(Sum& sum, const CavitySpace& space, const CavityWall& wall)
{
  const ShellMesh mesh = placed(wall);
  const double up = wall.side == WallSide::top ? 1.0 : -1.0;
  const PointLocator locator(mesh);
  const ShellMesh& planform = space.mesh().planform;
  for (std::size_t t = 0; t < planform.triangles.size(); ++t)
    for (const TrianglePoint& p : quartic_triangle_points())
    {
      const WallPoint here = wall_point(planform, t, p.xi, p.eta);
      const auto found = locator.locate(here.at.head<2>());
      if (!found) // a hole of the plate
        continue;
      const WallPoint above = wall_point(mesh, found->triangle, found->xi, found->eta);
      // Over the planform the area vector is (-dz/dx, -dz/dy, 1), whichever way the normals of the mesh point.
      const Eigen::Vector3d flow =
          up * p.weight * std::abs(here.area_vector.z()) / above.area_vector.z() * above.area_vector;
      sum.add(space.values_in(t, p.xi, p.eta, up), found->triangle, above, flow);
    }
}

template <class Sum>
void add_ribs(Sum& sum, const CavitySpace& space, const CavityWall& wall)
{
  const ShellMesh mesh = placed(wall);
  const PlanformEdge edge(space.mesh().planform);
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
    for (const TrianglePoint& p : triangle_points())
    {
      const WallPoint here = wall_point(mesh, t, p.xi, p.eta);
      sum.add(space.values_on_edge(edge.nearest(here.at.head<2>()), here.at.z()), t, here,
              wall.outward * p.weight * here.area_vector);
    }
}

/// @param sum  Loads or Forces
template <class Sum>
Eigen::MatrixXd summed(const CavitySpace& space, const CavityWall& wall, Sum sum)
{
  if (wall.side == WallSide::ribs)
    add_ribs(sum, space, wall);
  else
    add_plate(sum, space, wall);
  return sum.sum();
}

} // namespace

Eigen::MatrixXd wall_flow(const CavitySpace& space, const CavityWall& wall, const Eigen::MatrixXd& u)
{
  const auto num_values = 3 * static_cast<Eigen::Index>(wall.mesh->nodes.size());
  if (u.rows() != num_values)
    throw InvalidInput(message("wall_flow: there must be three displacements for each of ", wall.mesh->nodes.size(),
                               " nodes of the wall; got ", u.rows(), " rows"));
  return summed(space, wall, Loads(space, wall, u));
}

Eigen::MatrixXd wall_forces(const CavitySpace& space, const CavityWall& wall, const Eigen::MatrixXd& pressures)
{
  if (pressures.rows() != space.num_unknowns())
    throw InvalidInput(message("wall_forces: pressures must have a row for each of ", space.num_unknowns(),
                               " unknowns; got ", pressures.rows()));
  return summed(space, wall, Forces(wall, pressures));
}

} // namespace plate
