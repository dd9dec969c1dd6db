// SPDX-License-Identifier: MPL-2.0
#include <plate/mesh/locate.h>

#include <plate/elements/cubic_triangle.h>

#include <Eigen/Geometry>
#include <Eigen/LU>

#include <algorithm>

namespace plate
{

namespace
{

using NodePlaces = Eigen::Matrix<double, 2, CubicTriangle::num_nodes>;

constexpr double beside = 1e-3; // how far outside a triangle still counts as on its edge [natural coordinates]

NodePlaces node_places(const ShellMesh& mesh, std::size_t triangle)
{
  NodePlaces places;
  for (int i = 0; i < CubicTriangle::num_nodes; ++i)
    places.col(i) =
        mesh.nodes[static_cast<std::size_t>(mesh.triangles[triangle][static_cast<std::size_t>(i)])].head<2>();
  return places;
}

/// Newton's method for the natural coordinates of a point; they may lie outside the triangle.
Eigen::Vector2d natural_coordinates(const NodePlaces& places, const Eigen::Vector2d& point)
{
  constexpr int most_steps = 20; // curved sides are mild: three or four do
  Eigen::Vector2d natural(1.0 / 3.0, 1.0 / 3.0);
  for (int i = 0; i < most_steps; ++i)
  {
    const Eigen::Vector2d miss = point - places * CubicTriangle::shape(natural.x(), natural.y());
    const Eigen::Matrix2d J = places * CubicTriangle::gradient(natural.x(), natural.y());
    const Eigen::Vector2d step = J.inverse() * miss;
    natural += step;
    if (!(step.norm() > 1e-14))
      break;
  }
  return natural;
}

/// How far outside the triangle natural coordinates lie; negative inside.
double outside(const Eigen::Vector2d& natural)
{
  return std::max({-natural.x(), -natural.y(), natural.sum() - 1.0});
}

} // namespace

std::optional<MeshPoint> locate(const ShellMesh& mesh, const Eigen::Vector2d& point)
{
  std::optional<MeshPoint> best;
  double least = beside;
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
  {
    const NodePlaces places = node_places(mesh, t);
    const Eigen::Vector2d low = places.rowwise().minCoeff();
    const Eigen::Vector2d high = places.rowwise().maxCoeff();
    const double margin = beside * (high - low).maxCoeff() * 2.0;
    if (((point - low).array() < -margin).any() || ((point - high).array() > margin).any())
      continue;
    const Eigen::Vector2d natural = natural_coordinates(places, point);
    if (!natural.allFinite() || !(outside(natural) < least))
      continue;
    least = outside(natural);
    best = MeshPoint{t, natural.x(), natural.y()};
  }
  return best;
}

} // namespace plate
