// SPDX-License-Identifier: MPL-2.0
#include "body_cavity.h"

#include <plate/elements/cubic_triangle.h>
#include <plate/elements/quadrature.h>
#include <plate/mesh/planform_region.h>
#include <plate/meshes/arching.h>
#include <plate/meshes/thickness_map.h>

#include <Eigen/Geometry>
#include <Eigen/LU>

#include <utility>

namespace plate
{

namespace
{

using Eigen::Vector2d;
using Eigen::Vector3d;

/// Nodes of a planform, taken from those of the back as they are asked for.
class CavityBuilder
{
public:
  CavityBuilder(const BodyDesign& design, const BodyPart& back)
      : back_(back), arch_(design.top.geometry.outline, design.top.geometry.arching),
        thickness_(design.top.geometry.outline, design.top.geometry.thickness), index_(back.model.mesh.nodes.size(), -1)
  {
  }

  int node(int of_back)
  {
    int& index = index_[static_cast<std::size_t>(of_back)];
    if (index < 0)
    {
      index = static_cast<int>(planform.nodes.size());
      add(static_cast<std::size_t>(of_back));
    }
    return index;
  }

  ShellMesh planform;
  std::vector<double> back_face, top_face; // z at the nodes [m]

private:
  void add(std::size_t n)
  {
    const ShellMesh& mesh = back_.model.mesh;
    const Vector3d inside = back_.placement * (mesh.nodes[n] - 0.5 * mesh.thickness[n] * mesh.normals[n]);
    const Vector2d at = (back_.placement * mesh.nodes[n]).head<2>();
    const Height height = arch_.at(at);
    planform.nodes.emplace_back(at.x(), at.y(), 0.0);
    planform.normals.push_back(Vector3d::UnitZ());
    planform.thickness.push_back(mesh.thickness[n]);
    back_face.push_back(inside.z());
    top_face.push_back(height.z - 0.5 * thickness_.at(at) / height.normal().z());
  }

  const BodyPart& back_;
  ArchSurface arch_;
  ThicknessField thickness_;
  std::vector<int> index_;
};

Eigen::VectorXd vector_of(const std::vector<double>& values)
{
  return Eigen::Map<const Eigen::VectorXd>(values.data(), static_cast<Eigen::Index>(values.size()));
}

} // namespace

Cavity space_within(const BodyDesign& design, const BodyPart& back, const std::vector<std::array<int, 4>>& line)
{
  const ShellMesh& mesh = back.model.mesh;
  std::vector<Vector2d> rib;
  for (const auto& edge : line)
    for (std::size_t k = 0; k < 3; ++k)
      rib.push_back(mesh.nodes[static_cast<std::size_t>(edge[k])].head<2>());
  CavityBuilder builder(design, back);
  for (const auto& t : mesh.triangles)
  {
    const auto corner = [&](std::size_t k) -> Vector2d { return mesh.nodes[static_cast<std::size_t>(t[k])].head<2>(); };
    if (!polygon_contains(rib, (corner(0) + corner(1) + corner(2)) / 3.0))
      continue;
    // Seen from above the back's triangles turn the other way: corners 0 2 1.
    constexpr std::array<std::size_t, 10> order = {0, 2, 1, 8, 7, 6, 5, 4, 3, 9};
    std::array<int, 10> nodes;
    for (std::size_t k = 0; k < order.size(); ++k)
      nodes[k] = builder.node(t[order[k]]);
    builder.planform.triangles.push_back(nodes);
  }
  EdgeGroup ribs = {.name = "ribs", .edges = {}};
  for (auto edge = line.rbegin(); edge != line.rend(); ++edge)
    ribs.edges.push_back(
        {builder.node((*edge)[3]), builder.node((*edge)[2]), builder.node((*edge)[1]), builder.node((*edge)[0])});
  builder.planform.boundary.push_back(std::move(ribs));
  return {.planform = std::move(builder.planform),
          .back = vector_of(builder.back_face),
          .top = vector_of(builder.top_face)};
}

double volume(const Cavity& cavity)
{
  double sum = 0.0;
  for (const auto& t : cavity.planform.triangles)
  {
    Eigen::Matrix<double, 2, CubicTriangle::num_nodes> place;
    Eigen::Matrix<double, CubicTriangle::num_nodes, 1> height;
    for (int i = 0; i < CubicTriangle::num_nodes; ++i)
    {
      const auto node = static_cast<std::size_t>(t[static_cast<std::size_t>(i)]);
      place.col(i) = cavity.planform.nodes[node].head<2>();
      height(i) = cavity.top[static_cast<Eigen::Index>(node)] - cavity.back[static_cast<Eigen::Index>(node)];
    }
    for (const TrianglePoint& p : triangle_points())
    {
      const Eigen::Matrix2d J = place * CubicTriangle::gradient(p.xi, p.eta);
      sum += p.weight * J.determinant() * CubicTriangle::shape(p.xi, p.eta).dot(height);
    }
  }
  return sum;
}

} // namespace plate
