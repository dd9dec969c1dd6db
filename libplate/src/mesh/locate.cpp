// SPDX-License-Identifier: MPL-2.0
#include <plate/mesh/locate.h>

#include <plate/elements/cubic_triangle.h>

#include <Eigen/Geometry>
#include <Eigen/LU>

#include <algorithm>
#include <array>
#include <cmath>
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

/// Where a triangle may have points: the box of its nodes, and a little more for the bulge of curved sides.
Eigen::AlignedBox2d reach_of(const ShellMesh& mesh, std::size_t triangle)
{
  constexpr double bulge = 0.05; // of the size: more than a third of a circle between four nodes
  const NodePlaces places = node_places(mesh, triangle);
  Eigen::AlignedBox2d box(Eigen::Vector2d(places.rowwise().minCoeff()), Eigen::Vector2d(places.rowwise().maxCoeff()));
  const double margin = bulge * box.sizes().maxCoeff();
  return {box.min().array() - margin, box.max().array() + margin};
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
  return PointLocator(mesh).locate(point);
}

PointLocator::PointLocator(const ShellMesh& mesh) : mesh_(mesh)
{
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
  {
    boxes_.push_back(reach_of(mesh, t));
    grid_.extend(boxes_.back());
  }
  // About one cell for each triangle: few triangles reach into each.
  const double size = std::sqrt(grid_.sizes().prod() / static_cast<double>(boxes_.size()));
  num_cells_ = (grid_.sizes() / size).array().ceil().cast<int>().max(1);
  triangles_.resize(static_cast<std::size_t>(num_cells_.prod()));
  for (std::size_t t = 0; t < boxes_.size(); ++t)
  {
    const Eigen::Vector2i low = cell_of(boxes_[t].min());
    const Eigen::Vector2i high = cell_of(boxes_[t].max());
    for (int row = low.y(); row <= high.y(); ++row)
      for (int column = low.x(); column <= high.x(); ++column)
        triangles_[static_cast<std::size_t>(row * num_cells_.x() + column)].push_back(t);
  }
}

Eigen::Vector2i PointLocator::cell_of(const Eigen::Vector2d& point) const
{
  const Eigen::Array2d place =
      (point - grid_.min()).array() / grid_.sizes().array() * num_cells_.array().cast<double>();
  return place.max(0.0).min(num_cells_.array().cast<double>() - 1.0).cast<int>();
}

std::optional<MeshPoint> PointLocator::locate(const Eigen::Vector2d& point) const
{
  std::optional<MeshPoint> best;
  double least = beside;
  const Eigen::Vector2i cell = cell_of(point);
  for (const std::size_t t : triangles_[static_cast<std::size_t>(cell.y() * num_cells_.x() + cell.x())])
  {
    if (!boxes_[t].contains(point))
      continue;
    const NodePlaces places = node_places(mesh_, t);
    for (const auto& [xi, eta] : starts)
    {
      const std::optional<Eigen::Vector2d> natural = natural_coordinates(places, point, {xi, eta});
      if (!natural || !(outside(*natural) < least))
        continue;
      least = outside(*natural);
      best = MeshPoint{t, natural->x(), natural->y()};
      break;
    }
    if (least < 0.0) // inside: no other triangle has it
      break;
  }
  return best;
}

} // namespace plate
