// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "column_groups.h"
#include "supernodal_solve.h"

#include <span>
#include <vector>

namespace plate
{

/// Products with L^-1 A L^-T for a symmetric matrix A in the order of elimination.
///
/// Where a subtree of the elimination fits into the cache, its part of the three steps is done at one go, so that its
/// panels are read once from memory instead of twice.
class SupernodalCongruence
{
public:
  /// @param L  outlives this object
  SupernodalCongruence(const SupernodalFactor& L, const LowerColumns& A);

  /// Whether A couples unknowns only where elimination does, so that subtrees can be done one by one; without it
  /// apply() may not be called.
  [[nodiscard]] bool fits() const { return fits_; }

  /// out = L^-1 A L^-T y, from and to vectors of the caller that may not overlap.
  void apply(std::span<const double> y, std::span<double> out);

private:
  /// Supernodes that follow each other: a subtree, or some above all subtrees.
  struct Run
  {
    SupernodeRange supernodes;
    bool is_subtree;
  };

  void find_runs();
  [[nodiscard]] bool couples_along_tree(const LowerColumns& A) const;

  SupernodalFactor L_;
  ColumnGroups A_;
  std::vector<Run> runs_; ///< from the last supernode to the first
  bool fits_ = false;
  std::vector<double> x_;
  std::vector<double> work_;
};

} // namespace plate
