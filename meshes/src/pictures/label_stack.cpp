// SPDX-License-Identifier: MPL-2.0
#include "label_stack.h"

#include <algorithm>
#include <numeric>

namespace plate
{

std::vector<double> stacked(const std::vector<double>& wanted, double spacing, double low, double high)
{
  std::vector<std::size_t> order(wanted.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t i, std::size_t j) { return wanted[i] < wanted[j]; });

  // With the spacing taken off, positions need only not to fall: groups of equal ones, each at its mean.
  struct Group
  {
    double sum = 0.0;
    std::size_t size = 0;
    [[nodiscard]] double mean() const { return sum / static_cast<double>(size); }
  };
  std::vector<Group> groups;
  for (std::size_t rank = 0; rank < order.size(); ++rank)
  {
    groups.push_back({.sum = wanted[order[rank]] - spacing * static_cast<double>(rank), .size = 1});
    while (groups.size() > 1 && groups[groups.size() - 2].mean() >= groups.back().mean())
    {
      const Group last = groups.back();
      groups.pop_back();
      groups.back().sum += last.sum;
      groups.back().size += last.size;
    }
  }

  std::vector<double> positions(wanted.size());
  const double room = high - spacing * static_cast<double>(order.empty() ? 0 : order.size() - 1);
  std::size_t rank = 0;
  for (const Group& group : groups)
    for (std::size_t i = 0; i < group.size; ++i, ++rank)
      positions[order[rank]] = std::max(low, std::min(group.mean(), room)) + spacing * static_cast<double>(rank);
  return positions;
}

} // namespace plate
