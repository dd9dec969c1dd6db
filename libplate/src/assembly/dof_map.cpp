// SPDX-License-Identifier: MPL-2.0
#include <plate/assembly/dof_map.h>

#include "rigid_rows.h"

#include <algorithm>
#include <iterator>

namespace plate
{

namespace
{

/// Unknowns of a node that a support holds, as flags for x, y, z and the two rotations.
std::array<bool, DofMap::dofs_per_node> held_by(EdgeSupport support)
{
  switch (support)
  {
  case EdgeSupport::free:
    return {};
  case EdgeSupport::rest:
    return {false, false, true, false, false};
  case EdgeSupport::hinged:
    return {true, true, true, false, false};
  case EdgeSupport::clamped:
    return {true, true, true, true, true};
  }
  return {};
}

const EdgeGroup& group_named(const ShellMesh& mesh, const std::string& name)
{
  return *std::find_if(mesh.boundary.begin(), mesh.boundary.end(), [&](const EdgeGroup& g) { return g.name == name; });
}

std::vector<std::array<bool, DofMap::dofs_per_node>> held_unknowns(const Model& model)
{
  std::vector<std::array<bool, DofMap::dofs_per_node>> held(model.mesh.nodes.size(),
                                                            {false, false, false, false, false});
  for (const SupportedEdge& edge : model.supports)
  {
    const auto flags = held_by(edge.support);
    for (const auto& nodes : group_named(model.mesh, edge.group).edges)
      for (const int node : nodes)
        for (std::size_t k = 0; k < flags.size(); ++k)
          if (flags[k])
            held[static_cast<std::size_t>(node)][k] = true;
  }
  return held;
}

} // namespace

DofMap number_unknowns(const Model& model)
{
  DofMap dofs;
  for (const auto& held : held_unknowns(model))
  {
    auto& equations = dofs.equation.emplace_back();
    for (std::size_t k = 0; k < held.size(); ++k)
      equations[k] = held[k] ? DofMap::held : dofs.num_equations++;
  }
  return dofs;
}

std::vector<std::vector<int>> unknowns_by_node(const DofMap& dofs)
{
  std::vector<std::vector<int>> unknowns(dofs.equation.size());
  for (std::size_t node = 0; node < unknowns.size(); ++node)
  {
    std::copy_if(dofs.equation[node].begin(), dofs.equation[node].end(), std::back_inserter(unknowns[node]),
                 [](int equation) { return equation != DofMap::held; });
    if (!dofs.third_rotation.empty() && dofs.third_rotation[node] != DofMap::held)
      unknowns[node].push_back(dofs.third_rotation[node]);
  }
  return unknowns;
}

Eigen::Matrix3Xd nodal_displacements(const DofMap& dofs, const Eigen::Ref<const Eigen::VectorXd>& x)
{
  Eigen::Matrix3Xd u = Eigen::Matrix3Xd::Zero(3, static_cast<Eigen::Index>(dofs.equation.size()));
  for (std::size_t node = 0; node < dofs.equation.size(); ++node)
    for (int k = 0; k < 3; ++k)
      if (const int equation = dofs.equation[node][static_cast<std::size_t>(k)]; equation != DofMap::held)
        u(k, static_cast<Eigen::Index>(node)) = x(equation);
  return u;
}

Eigen::MatrixXd rigid_motions(const Model& model, const DofMap& dofs)
{
  RigidRows rows(dofs.num_equations);
  for (std::size_t node = 0; node < dofs.equation.size(); ++node)
  {
    const Eigen::Matrix<double, 5, 6> R =
        rigid_motions_of_node(model.mesh.nodes[node], model.mesh.normals[node], model.material.axes);
    rows.reach(model.mesh.nodes[node]);
    for (int k = 0; k < DofMap::dofs_per_node; ++k)
      rows.add(dofs.equation[node][static_cast<std::size_t>(k)], R.row(k));
  }
  return rows.allowed();
}

} // namespace plate
