// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/assemble.h>

#include <Eigen/Core>

#include <functional>
#include <memory>
#include <span>
#include <vector>

namespace plate
{

/// Factorisation A = P^T L L^T P of a sparse symmetric positive definite matrix, kept for many solves; P permutes.
///
/// Built with CHOLMOD (supernodal, METIS on the graph of the nodes) or, without it, on Eigen's own factorisation.
class SparseCholesky
{
public:
  /// @param lower   lower triangle of the matrix
  /// @param groups  unknowns that stay together in the elimination order, e.g. those of a node; the unknowns of a group
  ///                couple to the same others. Each unknown is in one group, ascending within it.
  /// @throws NumericalFailure  if the matrix is not positive definite
  SparseCholesky(const SparseMatrix& lower, const std::vector<std::vector<int>>& groups);
  ~SparseCholesky();
  SparseCholesky(SparseCholesky&&) noexcept;
  SparseCholesky& operator=(SparseCholesky&&) noexcept;

  /// Factorises another matrix of the same pattern; the elimination order is kept, as it depends on the pattern alone.
  ///
  /// @throws NumericalFailure  if the matrix is not positive definite
  void factorise(const SparseMatrix& lower);

  /// Solves A x = b for one or several columns, several at once in a third of the time; x and b may not overlap.
  void solve(const Eigen::Ref<const Eigen::MatrixXd>& b, Eigen::Ref<Eigen::MatrixXd> x) const;

  /// The two halves of solve(): x = L^-1 P b, then x = P^T L^-T b; x and b may not overlap.
  void solve_lower(const Eigen::Ref<const Eigen::MatrixXd>& b, Eigen::Ref<Eigen::MatrixXd> x) const;
  void solve_upper(const Eigen::Ref<const Eigen::MatrixXd>& b, Eigen::Ref<Eigen::MatrixXd> x) const;

  /// A function (y, out) that writes L^-1 P B P^T L^-T y for a symmetric matrix B, in one pass over the factor: quicker
  /// than the two halves and a product, for many vectors. Vectors may not overlap. It keeps the values of B, belongs to
  /// one thread, and ends with this factorisation or the next.
  ///
  /// @param lower  lower triangle of B
  /// @return empty if B has entries that the elimination has not, and always without CHOLMOD
  [[nodiscard]] std::function<void(std::span<const double>, std::span<double>)>
  congruence(const SparseMatrix& lower) const;

private:
  struct Implementation;
  std::unique_ptr<Implementation> implementation_;
};

} // namespace plate
