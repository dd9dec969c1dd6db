// SPDX-License-Identifier: MPL-2.0
#include "sparse_sum.h"

#include <algorithm>

namespace plate::sparse_sum
{

namespace
{

/// Rows of the first column of a group: those of the group, then those of the groups after it that it meets.
void find_rows(const std::vector<std::vector<int>>& groups, std::size_t group, const std::vector<int>& neighbours,
               std::vector<int>& rows)
{
  rows.clear();
  for (auto other = std::lower_bound(neighbours.begin(), neighbours.end(), static_cast<int>(group));
       other != neighbours.end(); ++other)
  {
    const std::vector<int>& equations = groups[static_cast<std::size_t>(*other)];
    rows.insert(rows.end(), equations.begin(), equations.end());
  }
}

} // namespace

Pattern lower_pattern(const std::vector<std::vector<int>>& groups, const std::vector<std::vector<int>>& neighbours)
{
  Pattern pattern;
  std::vector<int> rows;
  for (std::size_t group = 0; group < groups.size(); ++group)
  {
    find_rows(groups, group, neighbours[group], rows);
    for (std::size_t column = 0; column < groups[group].size(); ++column) // each has one row less than the one before
    {
      pattern.inner.insert(pattern.inner.end(), rows.begin() + static_cast<std::ptrdiff_t>(column), rows.end());
      pattern.outer.push_back(static_cast<int>(pattern.inner.size()));
    }
  }
  return pattern;
}

SparseMatrix zero_matrix(const Pattern& pattern)
{
  const auto n = static_cast<Eigen::Index>(pattern.outer.size()) - 1;
  SparseMatrix zero(n, n);
  zero.resizeNonZeros(static_cast<Eigen::Index>(pattern.inner.size()));
  std::copy(pattern.outer.begin(), pattern.outer.end(), zero.outerIndexPtr());
  std::copy(pattern.inner.begin(), pattern.inner.end(), zero.innerIndexPtr());
  std::fill_n(zero.valuePtr(), zero.nonZeros(), 0.0);
  return zero;
}

} // namespace plate::sparse_sum
