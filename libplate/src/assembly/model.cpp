// SPDX-License-Identifier: MPL-2.0
#include <plate/assembly/model.h>

#include <plate/core/error.h>

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
  if (!std::all_of(profile.height.begin(), profile.height.end(), [](double h) { return h > 0.0 && std::isfinite(h); }) ||
      !(bar.width > 0.0))
    throw InvalidInput("model: heights and width of a bar must be positive");
  if (footprint.station.size() != mesh.nodes.size())
    throw InvalidInput(message("model: a bar footprint needs a station for each of the ", mesh.nodes.size(),
                               " nodes; got ", footprint.station.size()));
  check_elastic(bar.material.elastic);
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
  for (const SupportedEdge& edge : model.supports)
  {
    const auto same_name = [&](const EdgeGroup& group) { return group.name == edge.group; };
    if (std::none_of(mesh.boundary.begin(), mesh.boundary.end(), same_name))
      throw InvalidInput(message("model: no boundary group is called '", edge.group, "'"));
  }
}

std::vector<int> bar_of_triangle(const ShellMesh& mesh)
{
  std::vector<int> bar(mesh.triangles.size(), -1);
  for (std::size_t i = 0; i < mesh.bars.size(); ++i)
    for (const int triangle : mesh.bars[i].triangles)
      bar[static_cast<std::size_t>(triangle)] = static_cast<int>(i);
  return bar;
}

ElementInput element_input(const Model& model, std::size_t triangle, int bar)
{
  ElementInput input;
  const ShellMesh& mesh = model.mesh;
  for (int i = 0; i < ShellTriangle::num_nodes; ++i)
  {
    const auto node = static_cast<std::size_t>(mesh.triangles[triangle][static_cast<std::size_t>(i)]);
    input.nodes.position.col(i) = mesh.nodes[node];
    input.nodes.normal.col(i) = mesh.normals[node];
    input.nodes.thickness(i) = mesh.thickness[node];
    if (bar >= 0)
      input.nodes.station(i) = mesh.bars[static_cast<std::size_t>(bar)].station[node];
  }
  if (bar >= 0)
    input.bar = &model.bars[static_cast<std::size_t>(bar)];
  return input;
}

} // namespace plate
