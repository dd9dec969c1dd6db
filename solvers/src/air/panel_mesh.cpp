// SPDX-License-Identifier: MPL-2.0
#include "panel_mesh.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <limits>
#include <map>
#include <utility>

namespace plate
{

namespace
{

using Corners = std::array<int, 3>;

/// The nine triangles between the nodes of a cubic one, in the order of ShellMesh::triangles.
constexpr std::array<Corners, 9> nine_parts = {
    {{0, 3, 8}, {3, 9, 8}, {3, 4, 9}, {4, 5, 9}, {4, 1, 5}, {8, 9, 7}, {9, 6, 7}, {9, 5, 6}, {7, 6, 2}}};

/// A triangle as the search for the nearest one takes it.
struct Target
{
  Eigen::Vector3d corner[3];
  Eigen::Vector3d centre;
  double radius; // [m]
};

Target target(const PanelMesh& panels, const Corners& triangle)
{
  Target out;
  for (std::size_t i = 0; i < 3; ++i)
    out.corner[i] = panels.vertices[static_cast<std::size_t>(triangle[i])];
  out.centre = (out.corner[0] + out.corner[1] + out.corner[2]) / 3.0;
  out.radius = 0.0;
  for (const Eigen::Vector3d& corner : out.corner)
    out.radius = std::max(out.radius, (corner - out.centre).norm());
  return out;
}

/// Weights of the corners at the foot of a point, pulled back to the triangle where it lies beside it.
Eigen::Vector3d weights_at(const Target& t, const Eigen::Vector3d& point)
{
  const Eigen::Vector3d normal = (t.corner[1] - t.corner[0]).cross(t.corner[2] - t.corner[0]);
  Eigen::Vector3d weights;
  for (int i = 0; i < 3; ++i)
    weights(i) = (t.corner[(i + 2) % 3] - t.corner[(i + 1) % 3]).cross(point - t.corner[(i + 1) % 3]).dot(normal);
  weights = (weights / normal.squaredNorm()).cwiseMax(0.0);
  return weights / weights.sum();
}

double distance(const Target& t, const Eigen::Vector3d& weights, const Eigen::Vector3d& point)
{
  return (weights(0) * t.corner[0] + weights(1) * t.corner[1] + weights(2) * t.corner[2] - point).norm();
}

} // namespace

std::vector<bool> edge_vertices(const PanelMesh& panels)
{
  std::map<std::pair<int, int>, int> uses;
  for (const Corners& t : panels.triangles)
    for (std::size_t i = 0; i < 3; ++i)
      ++uses[std::minmax(t[i], t[(i + 1) % 3])];
  std::vector<bool> on_edge(panels.vertices.size(), false);
  for (const auto& [ends, count] : uses)
    if (count == 1)
      on_edge[static_cast<std::size_t>(ends.first)] = on_edge[static_cast<std::size_t>(ends.second)] = true;
  return on_edge;
}

PanelMesh panels_of(const ShellMesh& mesh)
{
  PanelMesh panels{.vertices = mesh.nodes, .triangles = {}};
  for (const auto& nodes : mesh.triangles)
    for (const Corners& part : nine_parts)
    {
      const auto at = [&](std::size_t i) { return nodes[static_cast<std::size_t>(part[i])]; };
      panels.triangles.push_back({at(0), at(1), at(2)});
    }
  return panels;
}

Eigen::VectorXd vertex_areas(const PanelMesh& panels)
{
  Eigen::VectorXd areas = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(panels.vertices.size()));
  for (const Corners& triangle : panels.triangles)
  {
    const Target t = target(panels, triangle);
    const double area = 0.5 * (t.corner[1] - t.corner[0]).cross(t.corner[2] - t.corner[0]).norm();
    for (const int vertex : triangle)
      areas(vertex) += area / 3.0;
  }
  return areas;
}

Eigen::SparseMatrix<double, Eigen::RowMajor> interpolation(const PanelMesh& panels,
                                                           const std::vector<Eigen::Vector3d>& points)
{
  std::vector<Target> targets;
  for (const Corners& triangle : panels.triangles)
    targets.push_back(target(panels, triangle));
  std::vector<Eigen::Triplet<double>> entries;
  for (std::size_t k = 0; k < points.size(); ++k)
  {
    double nearest = std::numeric_limits<double>::infinity();
    std::size_t best = 0;
    Eigen::Vector3d best_weights;
    for (std::size_t t = 0; t < targets.size(); ++t)
    {
      const double reach = nearest + targets[t].radius;
      if ((points[k] - targets[t].centre).squaredNorm() > reach * reach)
        continue;
      const Eigen::Vector3d weights = weights_at(targets[t], points[k]);
      if (const double d = distance(targets[t], weights, points[k]); d < nearest)
      {
        nearest = d;
        best = t;
        best_weights = weights;
      }
    }
    for (std::size_t i = 0; i < 3; ++i)
      entries.emplace_back(static_cast<int>(k), panels.triangles[best][i], best_weights(static_cast<Eigen::Index>(i)));
  }
  Eigen::SparseMatrix<double, Eigen::RowMajor> P(static_cast<Eigen::Index>(points.size()),
                                                 static_cast<Eigen::Index>(panels.vertices.size()));
  P.setFromTriplets(entries.begin(), entries.end());
  return P;
}

} // namespace plate
