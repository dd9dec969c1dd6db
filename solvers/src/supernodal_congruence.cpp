// SPDX-License-Identifier: MPL-2.0
#include "supernodal_congruence.h"

#include <algorithm>
#include <cstddef>

namespace plate
{

namespace
{

/// Most values of the panels of a subtree that is done at one go. From half a megabyte to eight the times are the same
/// (measured, benchmarks/README.md).
constexpr std::size_t most_values = (std::size_t{1} << 20) / sizeof(double);

/// First supernode of the subtree below each; elimination is in postorder, so that a subtree's follow each other.
std::vector<std::size_t> first_below(const SupernodalFactor& L)
{
  const std::size_t size = L.first_column.size() - 1;
  std::vector<std::size_t> supernode_of(static_cast<std::size_t>(L.first_column.back()));
  for (std::size_t s = 0; s < size; ++s)
    std::fill(supernode_of.begin() + L.first_column[s], supernode_of.begin() + L.first_column[s + 1], s);
  std::vector<std::size_t> first(size);
  for (std::size_t s = 0; s < size; ++s)
    first[s] = s;
  for (std::size_t s = 0; s < size; ++s)
  {
    const int below = L.first_row[s] + L.first_column[s + 1] - L.first_column[s];
    if (below == L.first_row[s + 1])
      continue;
    std::size_t& of_parent = first[supernode_of[static_cast<std::size_t>(L.rows[static_cast<std::size_t>(below)])]];
    of_parent = std::min(of_parent, first[s]);
  }
  return first;
}

} // namespace

SupernodalCongruence::SupernodalCongruence(const SupernodalFactor& L, const LowerColumns& A)
    : L_(L), A_(A, L.first_column)
{
  find_runs();
  fits_ = couples_along_tree(A);
}

void SupernodalCongruence::find_runs()
{
  const std::vector<std::size_t> first = first_below(L_);
  const auto num_values = [&](std::size_t from, std::size_t to)
  { return static_cast<std::size_t>(L_.first_value[to]) - static_cast<std::size_t>(L_.first_value[from]); };
  for (std::size_t end = first.size(); end > 0;)
  {
    const std::size_t root = end - 1;
    const bool is_subtree = num_values(first[root], end) <= most_values;
    if (!is_subtree && !runs_.empty() && !runs_.back().is_subtree)
      runs_.back().supernodes.from = root;
    else
      runs_.push_back({.supernodes = {.from = is_subtree ? first[root] : root, .to = end}, .is_subtree = is_subtree});
    end = runs_.back().supernodes.from;
  }
}

bool SupernodalCongruence::couples_along_tree(const LowerColumns& A) const
{
  constexpr int above = -1; // all subtrees
  std::vector<int> subtree_of(A.outer.size() - 1, above);
  for (std::size_t r = 0; r < runs_.size(); ++r)
    if (runs_[r].is_subtree)
      std::fill(subtree_of.begin() + L_.first_column[runs_[r].supernodes.from],
                subtree_of.begin() + L_.first_column[runs_[r].supernodes.to], static_cast<int>(r));
  for (std::size_t column = 0; column < subtree_of.size(); ++column)
    for (int entry = A.outer[column]; entry < A.outer[column + 1]; ++entry)
    {
      const int other = subtree_of[static_cast<std::size_t>(A.inner[static_cast<std::size_t>(entry)])];
      if (other != above && other != subtree_of[column])
        return false;
    }
  return true;
}

void SupernodalCongruence::apply(std::span<const double> y, std::span<double> out)
{
  x_.assign(y.begin(), y.end());
  std::fill(out.begin(), out.end(), 0.0);
  const auto down = [&](const Run& run)
  {
    supernodal_solve_upper(L_, run.supernodes, x_, work_);
    A_.multiply(run.supernodes.from, run.supernodes.to, x_.data(), out.data(), work_);
  };
  for (const Run& run : runs_)
    if (!run.is_subtree)
      down(run);
  for (const Run& run : runs_)
    if (run.is_subtree)
    {
      down(run);
      supernodal_solve_lower(L_, run.supernodes, out, work_);
    }
  for (auto run = runs_.rbegin(); run != runs_.rend(); ++run)
    if (!run->is_subtree)
      supernodal_solve_lower(L_, run->supernodes, out, work_);
}

} // namespace plate
