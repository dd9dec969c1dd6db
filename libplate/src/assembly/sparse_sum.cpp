// SPDX-License-Identifier: MPL-2.0
#include "sparse_sum.h"

namespace plate::sparse_sum
{

SparseMatrix zero_matrix(const std::vector<std::vector<int>>& groups, const std::vector<std::vector<int>>& neighbours)
{
  std::vector<int> outer = {0};
  std::vector<int> inner;
  for (std::size_t group = 0; group < groups.size(); ++group)
    for (const int column : groups[group])
    {
      for (const int neighbour : neighbours[group])
        for (const int row : groups[static_cast<std::size_t>(neighbour)])
          if (row >= column)
            inner.push_back(row);
      outer.push_back(static_cast<int>(inner.size()));
    }
  const std::vector<double> values(inner.size(), 0.0);
  const int n = static_cast<int>(outer.size()) - 1;
  return Eigen::Map<const SparseMatrix>(n, n, static_cast<int>(inner.size()), outer.data(), inner.data(),
                                        values.data());
}

} // namespace plate::sparse_sum
