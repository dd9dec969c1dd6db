// SPDX-License-Identifier: MPL-2.0
#include "assembly_plan.h"

#include "sparse_sum.h"

#include <algorithm>
#include <cstdint>
#include <utility>

namespace plate
{

namespace
{

constexpr int per_node = DofMap::dofs_per_node;

std::size_t num_active(const std::array<int, per_node>& equations)
{
  return static_cast<std::size_t>(per_node - std::count(equations.begin(), equations.end(), DofMap::held));
}

AssemblyPlan::Offsets pair_offsets(const std::array<int, ShellTriangle::num_nodes>& nodes,
                                   const std::vector<std::vector<int>>& neighbours, const DofMap& dofs)
{
  AssemblyPlan::Offsets offsets;
  for (std::size_t i = 1; i < nodes.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
    {
      const auto [low, high] = std::minmax(nodes[i], nodes[j]);
      const std::vector<int>& list = neighbours[static_cast<std::size_t>(low)];
      std::size_t rows = 0;
      for (auto other = std::upper_bound(list.begin(), list.end(), low); *other != high; ++other)
        rows += num_active(dofs.equation[static_cast<std::size_t>(*other)]);
      offsets[pair_place(i, j)] = static_cast<int>(rows);
    }
  return offsets;
}

/// Each triangle gets the first colour that no triangle at one of its nodes has.
std::vector<std::vector<int>> colour(const ShellMesh& mesh)
{
  constexpr std::size_t most_colours = 64;
  std::vector<std::uint64_t> taken(mesh.nodes.size(), 0);
  std::vector<std::vector<int>> colours(most_colours);
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
  {
    std::uint64_t around = 0;
    for (const int node : mesh.triangles[t])
      around |= taken[static_cast<std::size_t>(node)];
    std::size_t c = 0;
    while (c + 1 < most_colours && (around >> c & 1U) != 0)
      ++c;
    colours[c].push_back(static_cast<int>(t));
    for (const int node : mesh.triangles[t])
      taken[static_cast<std::size_t>(node)] |= std::uint64_t{1} << c;
  }
  return colours;
}

/// Unknowns of a node that are not held.
struct Active
{
  std::array<int, per_node> place;    // in the element's rows of the node
  std::array<int, per_node> equation; // ascending
  std::size_t size = 0;

  explicit Active(const std::array<int, per_node>& equations)
  {
    for (std::size_t k = 0; k < equations.size(); ++k)
      if (equations[k] != DofMap::held)
      {
        place[size] = static_cast<int>(k);
        equation[size++] = equations[k];
      }
  }
};

} // namespace

AssemblyPlan make_plan(const ShellMesh& mesh, DofMap dofs)
{
  AssemblyPlan plan;
  plan.triangles = mesh.triangles;
  plan.dofs = std::move(dofs);
  const std::vector<std::vector<int>> neighbours = sparse_sum::neighbours(mesh.nodes.size(), mesh.triangles);
  plan.pattern = sparse_sum::zero_matrix(unknowns_by_node(plan.dofs), neighbours);
  for (const auto& nodes : mesh.triangles)
    plan.offsets.push_back(pair_offsets(nodes, neighbours, plan.dofs));
  plan.colours = colour(mesh);
  return plan;
}

void scatter(const AssemblyPlan& plan, std::size_t triangle, const ShellTriangle::Matrix& Ke,
             const ShellTriangle::Matrix& Me, double* K, double* M)
{
  const auto& nodes = plan.triangles[triangle];
  const int* outer = plan.pattern.outerIndexPtr();
  for (std::size_t i = 0; i < nodes.size(); ++i)
    for (std::size_t j = 0; j <= i; ++j)
    {
      const bool in_order = nodes[i] > nodes[j];
      const std::size_t row_node = in_order ? i : j;
      const std::size_t column_node = in_order ? j : i;
      const Active rows(plan.dofs.equation[static_cast<std::size_t>(nodes[row_node])]);
      const Active columns(plan.dofs.equation[static_cast<std::size_t>(nodes[column_node])]);
      const int row = per_node * static_cast<int>(row_node);
      const int column = per_node * static_cast<int>(column_node);
      for (std::size_t c = 0; c < columns.size; ++c)
      {
        const std::size_t first = i == j ? c : 0;
        const std::ptrdiff_t slot =
            outer[columns.equation[c]] +
            (i == j ? 0 : static_cast<std::ptrdiff_t>(columns.size - c) + plan.offsets[triangle][pair_place(i, j)]);
        for (std::size_t r = first; r < rows.size; ++r)
        {
          const std::ptrdiff_t at = slot + static_cast<std::ptrdiff_t>(r - first);
          K[at] += Ke(row + rows.place[r], column + columns.place[c]);
          M[at] += Me(row + rows.place[r], column + columns.place[c]);
        }
      }
    }
}

} // namespace plate
