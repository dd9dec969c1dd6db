// SPDX-License-Identifier: MPL-2.0
#include "body_cavity.h"

#include <plate/mesh/planform_region.h>
#include <plate/meshes/arching.h>
#include <plate/meshes/thickness_map.h>

#include <Eigen/Geometry>

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

CavityMesh space_within(const BodyDesign& design, const BodyPart& back, const std::vector<std::array<int, 4>>& line)
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

std::vector<HoleOutline> hole_outlines(const PlateGeometry& plate)
{
  constexpr int points_per_piece = 8; // chords of an eye are 0.1 mm inside it
  const ThicknessField thickness(plate.outline, plate.thickness);
  std::vector<HoleOutline> out;
  for (const Soundhole& hole : plate.soundholes)
    for (const CurveLoop& loop : soundhole_loops(hole, plate.outline))
    {
      std::vector<Vector2d> points = sample(loop, points_per_piece);
      double neck = 0.0;
      for (const Vector2d& point : points)
        neck += thickness.at(point) / static_cast<double>(points.size());
      out.push_back({.points = std::move(points), .wall_thickness = neck});
    }
  return out;
}

} // namespace plate
