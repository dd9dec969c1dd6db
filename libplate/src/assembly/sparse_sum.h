// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/assemble.h>

#include <algorithm>
#include <cstddef>
#include <span>
#include <vector>

/// Sums of element matrices in sparse lower triangles.
namespace plate::sparse_sum
{

/// For each group of unknowns those it shares an element with, itself included, ascending.
///
/// @param elements  a range of ranges of indices of groups
template <class Elements>
[[nodiscard]] std::vector<std::vector<int>> neighbours(std::size_t num_groups, const Elements& elements)
{
  std::vector<std::vector<int>> lists(num_groups);
  for (const auto& element : elements)
    for (const int a : element)
      lists[static_cast<std::size_t>(a)].insert(lists[static_cast<std::size_t>(a)].end(), element.begin(),
                                                element.end());
  for (auto& list : lists)
  {
    std::sort(list.begin(), list.end());
    list.erase(std::unique(list.begin(), list.end()), list.end());
  }
  return lists;
}

/// Where a lower triangle has entries, in compressed columns.
struct Pattern
{
  std::vector<int> outer = {0}; ///< first entry of each column, and of one beyond the last
  std::vector<int> inner = {};  ///< row of each entry, ascending within a column
};

/// @param groups  equations of each group, ascending within and from group to group
[[nodiscard]] Pattern lower_pattern(const std::vector<std::vector<int>>& groups,
                                    const std::vector<std::vector<int>>& neighbours);

[[nodiscard]] SparseMatrix zero_matrix(const Pattern& pattern);

/// Calls visit(slot, row, column) for each entry of an element matrix that falls into the lower triangle; slot is the
/// index of its value in a matrix of the pattern.
///
/// @param equations  of the rows of the element matrix; negative for those left out
template <class Visit>
void for_each_slot(const SparseMatrix& pattern, std::span<const int> equations, const Visit& visit)
{
  const int* outer = pattern.outerIndexPtr();
  const int* inner = pattern.innerIndexPtr();
  const int n = static_cast<int>(equations.size());
  for (int c = 0; c < n; ++c)
  {
    const int column = equations[static_cast<std::size_t>(c)];
    if (column < 0)
      continue;
    for (int r = 0; r < n; ++r)
    {
      const int row = equations[static_cast<std::size_t>(r)];
      if (row < column)
        continue;
      visit(std::lower_bound(inner + outer[column], inner + outer[column + 1], row) - inner, r, c);
    }
  }
}

} // namespace plate::sparse_sum
