// SPDX-License-Identifier: MPL-2.0
#include "assembly_plan.h"

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
  int size = 0;

  explicit Active(const std::array<int, per_node>& equations)
  {
    for (std::size_t k = 0; k < equations.size(); ++k)
      if (equations[k] != DofMap::held)
      {
        place[static_cast<std::size_t>(size)] = static_cast<int>(k);
        equation[static_cast<std::size_t>(size++)] = equations[k];
      }
  }
};

using ElementNodes = std::array<Active, ShellTriangle::num_nodes>;

template <std::size_t... i>
ElementNodes active_unknowns(const AssemblyPlan& plan, std::size_t triangle, std::index_sequence<i...>)
{
  return {Active(plan.dofs.equation[static_cast<std::size_t>(plan.triangles[triangle][i])])...};
}

/// Part of a column of the element matrix that stands together in the sparse matrix.
struct ColumnPart
{
  std::ptrdiff_t slot;     // of the first value
  const Active& rows;      // of one node
  int first;               // of these rows
  std::size_t row_node;    // in the triangle
  std::size_t column_node; // in the triangle
  int column;              // of the node's columns
};

/// Adds the rows of one node.
void add_rows(const double* __restrict from, double* __restrict to)
{
  for (int r = 0; r < per_node; ++r)
    to[r] += from[r];
}

/// Calls visit(part) for all parts of the lower triangle that a triangle adds to.
template <class Visit>
void for_each_part(const AssemblyPlan& plan, std::size_t triangle, const Visit& visit)
{
  const auto& nodes = plan.triangles[triangle];
  const int* outer = plan.pattern.outer.data();
  const ElementNodes active = active_unknowns(plan, triangle, std::make_index_sequence<ShellTriangle::num_nodes>());
  for (std::size_t i = 0; i < nodes.size(); ++i)
  {
    const Active& own = active[i];
    for (int c = 0; c < own.size; ++c)
    {
      const auto k = static_cast<std::size_t>(c);
      visit(ColumnPart{outer[own.equation[k]], own, c, i, i, own.place[k]});
    }
    for (std::size_t j = 0; j < i; ++j)
    {
      const bool in_order = nodes[i] > nodes[j];
      const std::size_t row_node = in_order ? i : j;
      const std::size_t column_node = in_order ? j : i;
      const Active& columns = active[column_node];
      const int offset = plan.offsets[triangle][pair_place(i, j)];
      for (int c = 0; c < columns.size; ++c)
      {
        const auto k = static_cast<std::size_t>(c);
        visit(ColumnPart{outer[columns.equation[k]] + columns.size - c + offset, active[row_node], 0, row_node,
                         column_node, columns.place[k]});
      }
    }
  }
}

} // namespace

AssemblyPlan make_plan(const ShellMesh& mesh, DofMap dofs)
{
  AssemblyPlan plan;
  plan.triangles = mesh.triangles;
  plan.dofs = std::move(dofs);
  const std::vector<std::vector<int>> neighbours = sparse_sum::neighbours(mesh.nodes.size(), mesh.triangles);
  plan.pattern = sparse_sum::lower_pattern(unknowns_by_node(plan.dofs), neighbours);
  for (const auto& nodes : mesh.triangles)
    plan.offsets.push_back(pair_offsets(nodes, neighbours, plan.dofs));
  plan.colours = colour(mesh);
  return plan;
}

void prefetch(const AssemblyPlan& plan, std::size_t triangle, const double* K, const double* M)
{
  for_each_part(plan, triangle,
                [&](const ColumnPart& part)
                {
                  __builtin_prefetch(K + part.slot, 1);
                  __builtin_prefetch(M + part.slot, 1);
                });
}

void scatter(const AssemblyPlan& plan, std::size_t triangle, const ShellTriangle::Matrix& Ke,
             const ShellTriangle::Matrix& Me, double* K, double* M)
{
  for_each_part(plan, triangle,
                [&](const ColumnPart& part)
                {
                  const auto at =
                      static_cast<std::ptrdiff_t>(per_node * part.row_node) +
                      ShellTriangle::num_dofs * static_cast<std::ptrdiff_t>(per_node * part.column_node +
                                                                            static_cast<std::size_t>(part.column));
                  const double* from_K = Ke.data() + at;
                  const double* from_M = Me.data() + at;
                  double* to_K = K + part.slot;
                  double* to_M = M + part.slot;
                  if (part.first == 0 && part.rows.size == per_node) // most parts, so without a look at the list
                  {
                    add_rows(from_K, to_K);
                    add_rows(from_M, to_M);
                    return;
                  }
                  for (int r = part.first; r < part.rows.size; ++r)
                  {
                    const int row = part.rows.place[static_cast<std::size_t>(r)];
                    to_K[r - part.first] += from_K[row];
                    to_M[r - part.first] += from_M[row];
                  }
                });
}

} // namespace plate
