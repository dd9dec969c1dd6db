// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/assemble.h>

#include <Eigen/Core>

#include <memory>

namespace plate
{

/// Factorisation of a sparse symmetric positive definite matrix, kept for many solves.
///
/// Built with CHOLMOD (supernodal, METIS on the graph of the nodes) or, without it, on Eigen's own factorisation.
class SparseCholesky
{
public:
  /// @param lower  lower triangle of the matrix
  /// @param dofs   tells which unknowns belong to one node: they stay together in the elimination order
  /// @throws NumericalFailure  if the matrix is not positive definite
  SparseCholesky(const SparseMatrix& lower, const DofMap& dofs);
  ~SparseCholesky();
  SparseCholesky(SparseCholesky&&) noexcept;
  SparseCholesky& operator=(SparseCholesky&&) noexcept;

  /// Solves A x = b; x and b may not overlap.
  void solve(const Eigen::Ref<const Eigen::VectorXd>& b, Eigen::Ref<Eigen::VectorXd> x) const;

private:
  struct Implementation;
  std::unique_ptr<Implementation> implementation_;
};

} // namespace plate
