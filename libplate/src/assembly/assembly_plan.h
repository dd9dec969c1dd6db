// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "sparse_sum.h"

#include <plate/assembly/assemble.h>

#include <array>
#include <cstddef>
#include <vector>

namespace plate
{

/// What assembly needs to know of triangles and supports: the same for all models that share them.
struct AssemblyPlan
{
  /// For each pair of nodes of a triangle: how many rows of other nodes stand, in a column of the node with the lower
  /// number, between its own rows and those of the other node.
  using Offsets = std::array<int, ShellTriangle::num_nodes*(ShellTriangle::num_nodes - 1) / 2>;

  std::vector<std::array<int, ShellTriangle::num_nodes>> triangles;
  DofMap dofs;
  sparse_sum::Pattern pattern;
  std::vector<Offsets> offsets; ///< per triangle
  /// Triangles of the same colour share no node: several threads may add them at once, and entries add up in the order
  /// of the colours however many there are. The last colour may hold triangles that do share nodes.
  std::vector<std::vector<int>> colours;

  [[nodiscard]] bool fits(const ShellMesh& mesh, const DofMap& numbering) const
  {
    return triangles == mesh.triangles && dofs.equation == numbering.equation;
  }
};

[[nodiscard]] AssemblyPlan make_plan(const ShellMesh& mesh, DofMap dofs);

/// Place of a pair of nodes i > j of a triangle among its offsets.
[[nodiscard]] constexpr std::size_t pair_place(std::size_t i, std::size_t j)
{
  return i * (i - 1) / 2 + j;
}

/// Starts to fetch the values that a triangle will be added to: they lie far apart, and its matrices take a while.
void prefetch(const AssemblyPlan& plan, std::size_t triangle, const double* K, const double* M);

/// Adds the matrices of a triangle, K from both triangles and M likewise, to values of the pattern.
void scatter(const AssemblyPlan& plan, std::size_t triangle, const ShellTriangle::Matrix& Ke,
             const ShellTriangle::Matrix& Me, double* K, double* M);

} // namespace plate
