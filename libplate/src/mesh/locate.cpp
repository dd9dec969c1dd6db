// SPDX-License-Identifier: MPL-2.0
#include <plate/mesh/locate.h>

#include <plate/elements/cubic_triangle.h>

#include <Eigen/Geometry>
#include <Eigen/LU>

#include <algorithm>
#include <array>
#include <utility>

namespace plate
{

namespace
{

/// Where Newton's method starts: in the middle, then near each corner.
constexpr std::array<std::pair<double, double>, 4> starts = {
    {{1.0 / 3.0, 1.0 / 3.0}, {0.1, 0.1}, {0.8, 0.1}, {0.1, 0.8}}};

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

/// Newton's method for the natural coordinates of a point, in bounded steps; nothing if it does not arrive.
std::optional<Eigen::Vector2d> natural_coordinates(const NodePlaces& places, const Eigen::Vector2d& point,
                                                   Eigen::Vector2d natural)
{
  constexpr int most_steps = 30;
  constexpr double longest_step = 0.3; // the mapping of a strongly curved triangle folds over outside of it
  const double close = 1e-13 * (places.rowwise().maxCoeff() - places.rowwise().minCoeff()).norm(); // [m]
  for (int i = 0; i < most_steps; ++i)
  {
    const Eigen::Vector2d miss = point - places * CubicTriangle::shape(natural.x(), natural.y());
    if (miss.norm() <= close)
      return natural;
    const Eigen::Matrix2d J = places * CubicTriangle::gradient(natural.x(), natural.y());
    const Eigen::Vector2d step = J.inverse() * miss;
    natural += step * std::min(1.0, longest_step / step.norm());
    if (!natural.allFinite())
      return std::nullopt;
  }
  return std::nullopt;
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
    for (const auto& [xi, eta] : starts)
    {
      const std::optional<Eigen::Vector2d> natural = natural_coordinates(places, point, {xi, eta});
      if (!natural || !(outside(*natural) < least))
        continue;
      least = outside(*natural);
      best = MeshPoint{t, natural->x(), natural->y()};
      break;
    }
  }
  return best;
}

} // namespace plate
