// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace plate
{

/// A lower triangular factor in supernodes: runs of columns with the same rows below the diagonal block, stored as
/// dense column-major panels. What lies above the diagonal of a panel is not read.
struct SupernodalFactor
{
  std::span<const int> first_column; ///< of each supernode, then the number of columns
  std::span<const int> first_row;    ///< of each supernode in `rows`, then the size of `rows`
  std::span<const int> first_value;  ///< of each supernode in `values`, then the number of values
  std::span<const int> rows;         ///< rows of each panel, its own columns first
  const double* values;
};

/// Supernodes [from, to).
struct SupernodeRange
{
  std::size_t from;
  std::size_t to;
};

/// Solve L y = b and L^T y = b in place for one vector, as far as the columns of some supernodes go: whole subtrees of
/// the elimination or all that is above some, the others being done when their turn comes.
///
/// They pass over the panels once, four columns at a time, and fetch the next four ahead: half the time of the usual
/// calls of dense kernels (measured, benchmarks/README.md).
/// @param work  buffer of the caller
void supernodal_solve_lower(const SupernodalFactor& L, SupernodeRange supernodes, std::span<double> y,
                            std::vector<double>& work);
void supernodal_solve_upper(const SupernodalFactor& L, SupernodeRange supernodes, std::span<double> y,
                            std::vector<double>& work);

} // namespace plate
