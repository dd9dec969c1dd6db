// SPDX-License-Identifier: MPL-2.0
#include <plate/assembly/model.h>

#include "bar_torsion.h"

#include <plate/core/error.h>

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

void check_nodes(const ShellMesh& mesh)
{
  const std::size_t n = mesh.nodes.size();
  if (mesh.normals.size() != n || mesh.thickness.size() != n)
    throw InvalidInput(message("model: nodes, normals and thickness must have equal sizes; got ", n, ", ",
                               mesh.normals.size(), ", ", mesh.thickness.size()));
  if (!mesh.thickness_bubbles.empty() && mesh.thickness_bubbles.size() != mesh.triangles.size())
    throw InvalidInput(message("model: bubbles of the thickness must be given for each of ", mesh.triangles.size(),
                               " triangles or for none; got ", mesh.thickness_bubbles.size()));
  for (std::size_t i = 0; i < n; ++i)
  {
    if (!mesh.nodes[i].allFinite())
      throw InvalidInput(message("model: node ", i, " has a position that is not finite"));
    if (!(std::abs(mesh.normals[i].norm() - 1.0) < 1e-9))
      throw InvalidInput(message("model: normal of node ", i, " must have length 1; got ", mesh.normals[i].norm()));
    if (!(mesh.thickness[i] > 0.0 && std::isfinite(mesh.thickness[i])))
      throw InvalidInput(message("model: thickness at node ", i, " must be positive; got ", mesh.thickness[i], " m"));
  }
}

void check_triangles(const ShellMesh& mesh)
{
  if (mesh.triangles.empty())
    throw InvalidInput("model: the mesh has no triangles");
  std::vector<bool> used(mesh.nodes.size(), false);
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
    for (const int node : mesh.triangles[t])
    {
      if (node < 0 || static_cast<std::size_t>(node) >= mesh.nodes.size())
        throw InvalidInput(message("model: triangle ", t, " refers to node ", node, "; there are ", mesh.nodes.size()));
      used[static_cast<std::size_t>(node)] = true;
    }
  const auto orphan = std::find(used.begin(), used.end(), false);
  if (orphan != used.end())
    throw InvalidInput(message("model: node ", orphan - used.begin(), " belongs to no triangle"));
}

void check_bar(const Bar& bar, const BarFootprint& footprint, const ShellMesh& mesh)
{
  const BarProfile& profile = bar.profile;
  if (profile.station.size() != profile.height.size() || profile.station.empty() ||
      !std::is_sorted(profile.station.begin(), profile.station.end()))
    throw InvalidInput("model: a bar profile needs ascending stations with one height each");
  if (!std::all_of(profile.height.begin(), profile.height.end(),
                   [](double h) { return h > 0.0 && std::isfinite(h); }) ||
      !(bar.width > 0.0))
    throw InvalidInput("model: heights and width of a bar must be positive");
  if (footprint.station.size() != mesh.nodes.size())
    throw InvalidInput(message("model: a bar footprint needs a station for each of the ", mesh.nodes.size(),
                               " nodes; got ", footprint.station.size()));
  check_elastic(bar.material.elastic);
}

void check_patch(const Patch& patch)
{
  check_region(patch.region);
  check_laminate(patch.laminate);
}

void check_directions(const PlyDirections& directions, const Model& model)
{
  if (directions.ply >= model.material.laminate.plies.size())
    throw InvalidInput(message("model: directions are given for ply ", directions.ply, "; the laminate has ",
                               model.material.laminate.plies.size()));
  if (directions.double_angle.size() != model.mesh.nodes.size())
    throw InvalidInput(message("model: directions of a ply need one entry for each of the ", model.mesh.nodes.size(),
                               " nodes; got ", directions.double_angle.size()));
}

void check_point_mass(const PointMass& mass)
{
  if (!(mass.mass > 0.0 && std::isfinite(mass.mass) && mass.at.allFinite()))
    throw InvalidInput(message("model: a point mass must be positive; got ", mass.mass, " kg"));
}

Eigen::AlignedBox2d planform_box(const ShellMesh& mesh, std::size_t triangle)
{
  Eigen::AlignedBox2d box;
  for (const int node : mesh.triangles[triangle])
    box.extend(Eigen::Vector2d(mesh.nodes[static_cast<std::size_t>(node)].head<2>()));
  // A curved side reaches a little beyond its nodes.
  const Eigen::Vector2d margin = 0.05 * box.sizes();
  return {box.min() - margin, box.max() + margin};
}

/// Whether a segment has a point in a box. @source clipping of a segment: [Liang1984]
bool passes_through(const Eigen::Vector2d& from, const Eigen::Vector2d& to, const Eigen::AlignedBox2d& box)
{
  double enter = 0.0;
  double leave = 1.0;
  for (int k = 0; k < 2; ++k)
  {
    const double step = to(k) - from(k);
    if (step == 0.0)
    {
      if (from(k) < box.min()(k) || from(k) > box.max()(k))
        return false;
      continue;
    }
    const double a = (box.min()(k) - from(k)) / step;
    const double b = (box.max()(k) - from(k)) / step;
    enter = std::max(enter, std::min(a, b));
    leave = std::min(leave, std::max(a, b));
  }
  return enter <= leave;
}

bool passes_through(const std::vector<Eigen::Vector2d>& closed, const Eigen::AlignedBox2d& box)
{
  for (std::size_t i = 0; i < closed.size(); ++i)
    if (passes_through(closed[i], closed[(i + 1) % closed.size()], box))
      return true;
  return false;
}

} // namespace

void check_model(const Model& model)
{
  const ShellMesh& mesh = model.mesh;
  check_laminate(model.material.laminate);
  check_nodes(mesh);
  check_triangles(mesh);
  if (model.bars.size() != mesh.bars.size())
    throw InvalidInput(message("model: ", model.bars.size(), " bars but ", mesh.bars.size(), " footprints"));
  for (std::size_t i = 0; i < model.bars.size(); ++i)
    check_bar(model.bars[i], mesh.bars[i], mesh);
  for (const Patch& patch : model.patches)
    check_patch(patch);
  for (const PlyDirections& directions : model.directions)
    check_directions(directions, model);
  for (const PointMass& mass : model.masses)
    check_point_mass(mass);
  if (!(model.air_density >= 0.0 && std::isfinite(model.air_density)))
    throw InvalidInput(
        message("model: the density of the air must not be negative; got ", model.air_density, " kg/m3"));
  for (const SupportedEdge& edge : model.supports)
  {
    const auto same_name = [&](const EdgeGroup& group) { return group.name == edge.group; };
    if (std::none_of(mesh.boundary.begin(), mesh.boundary.end(), same_name))
      throw InvalidInput(message("model: no boundary group is called '", edge.group, "'"));
  }
}

std::vector<TriangleCover> triangle_covers(const Model& model)
{
  const ShellMesh& mesh = model.mesh;
  std::vector<TriangleCover> covers(mesh.triangles.size());
  for (std::size_t i = 0; i < mesh.bars.size(); ++i)
    for (const int triangle : mesh.bars[i].triangles)
      covers[static_cast<std::size_t>(triangle)].bar = static_cast<int>(i);
  for (std::size_t i = 0; i < model.patches.size(); ++i)
  {
    const PlanformRegion& region = model.patches[i].region;
    const std::vector<Eigen::Vector2d> edge = edge_of(region);
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
    {
      const bool cut = passes_through(edge, planform_box(mesh, t));
      if (!cut && !contains(region, mesh.nodes[static_cast<std::size_t>(mesh.triangles[t][0])].head<2>()))
        continue;
      covers[t].patches.push_back(static_cast<int>(i));
      covers[t].patch_edge = covers[t].patch_edge || cut;
    }
  }
  for (std::size_t i = 0; i < mesh.bars.size(); ++i)
  {
    const auto torsion = std::make_shared<const BarTorsion>(bar_torsion(model, i, covers));
    for (const int triangle : mesh.bars[i].triangles)
      covers[static_cast<std::size_t>(triangle)].bar_torsion = torsion;
  }
  return covers;
}

ElementInput element_input(const Model& model, std::size_t triangle, const TriangleCover& cover)
{
  ElementInput input;
  const ShellMesh& mesh = model.mesh;
  const auto bar = static_cast<std::size_t>(cover.bar); // only used if there is one
  for (const PlyDirections& directions : model.directions)
    input.parts.directions.push_back({.ply = directions.ply});
  for (int i = 0; i < ShellTriangle::num_nodes; ++i)
  {
    const auto node = static_cast<std::size_t>(mesh.triangles[triangle][static_cast<std::size_t>(i)]);
    input.nodes.position.col(i) = mesh.nodes[node];
    input.nodes.normal.col(i) = mesh.normals[node];
    input.nodes.thickness(i) = mesh.thickness[node];
    if (cover.bar >= 0)
      input.nodes.station(i) = mesh.bars[bar].station[node];
    for (std::size_t k = 0; k < model.directions.size(); ++k)
      input.parts.directions[k].double_angle.col(i) = model.directions[k].double_angle[node];
  }
  if (!mesh.thickness_bubbles.empty())
    input.nodes.thickness_bubbles =
        Eigen::Map<const Eigen::Matrix<double, 1, 5>>(mesh.thickness_bubbles[triangle].data());
  if (cover.bar >= 0)
    input.parts.bar = &model.bars[bar];
  input.parts.bar_torsion = cover.bar_torsion.get();
  for (const int patch : cover.patches)
    input.parts.patches.push_back(&model.patches[static_cast<std::size_t>(patch)]);
  input.parts.patch_edge = cover.patch_edge;
  return input;
}

} // namespace plate
