// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/assemble.h>

#include <span>
#include <vector>

namespace plate
{

/// Lower triangle of P A P^T in compressed columns, rows in no order, for matrices A of one pattern.
///
/// CHOLMOD would sort the entries of each matrix anew; here only values move once the places are known.
class PermutedLower
{
public:
  PermutedLower() = default;

  /// @param lower  lower triangle of A
  /// @param order  unknowns of A in the order of the rows of P
  PermutedLower(const SparseMatrix& lower, std::span<const int> order);

  /// Values of a matrix of the pattern, each at its place.
  [[nodiscard]] std::vector<double> values(const SparseMatrix& lower) const;

  [[nodiscard]] std::vector<int>& outer() { return outer_; }
  [[nodiscard]] std::vector<int>& inner() { return inner_; }

  /// Index of each value among those of A.
  [[nodiscard]] std::span<const int> source() const { return source_; }

private:
  std::vector<int> outer_;
  std::vector<int> inner_;
  std::vector<int> source_;
};

} // namespace plate
