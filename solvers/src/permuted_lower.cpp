// SPDX-License-Identifier: MPL-2.0
#include "permuted_lower.h"

#include <algorithm>
#include <cstddef>
#include <numeric>

namespace plate
{

namespace
{

/// Calls visit(row, column) for the place in the permuted lower triangle of each entry, in their order.
template <class Visit>
void for_each_place(const SparseMatrix& lower, const std::vector<int>& position, const Visit& visit)
{
  for (Eigen::Index column = 0; column < lower.outerSize(); ++column)
  {
    const int own = position[static_cast<std::size_t>(column)];
    for (SparseMatrix::InnerIterator entry(lower, column); entry; ++entry)
    {
      const int other = position[static_cast<std::size_t>(entry.row())];
      visit(std::max(own, other), std::min(own, other));
    }
  }
}

} // namespace

PermutedLower::PermutedLower(const SparseMatrix& lower, std::span<const int> order)
    : outer_(order.size() + 1, 0), inner_(static_cast<std::size_t>(lower.nonZeros())), source_(inner_.size())
{
  std::vector<int> position(order.size());
  for (std::size_t k = 0; k < order.size(); ++k)
    position[static_cast<std::size_t>(order[k])] = static_cast<int>(k);
  for_each_place(lower, position, [&](int, int column) { ++outer_[static_cast<std::size_t>(column) + 1]; });
  std::partial_sum(outer_.begin(), outer_.end(), outer_.begin());
  std::vector<int> next(outer_.begin(), outer_.end() - 1);
  int entry = 0;
  for_each_place(lower, position,
                 [&](int row, int column)
                 {
                   const auto place = static_cast<std::size_t>(next[static_cast<std::size_t>(column)]++);
                   inner_[place] = row;
                   source_[place] = entry++;
                 });
}

std::vector<double> PermutedLower::values(const SparseMatrix& lower) const
{
  std::vector<double> out(source_.size());
  std::transform(source_.begin(), source_.end(), out.begin(), [&](int entry) { return lower.valuePtr()[entry]; });
  return out;
}

} // namespace plate
