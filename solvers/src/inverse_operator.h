// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/assemble.h>
#include <plate/solvers/sparse_cholesky.h>

#include <Eigen/Core>

#include <functional>
#include <span>

namespace plate
{

/// Basis R of the rigid motions with R^T M R = I, and M R beside it.
struct RigidBasis
{
  Eigen::MatrixXd R;
  Eigen::MatrixXd MR;
};

[[nodiscard]] RigidBasis orthonormal_rigid_basis(const System& system);

/// Symmetric change of a matrix by a product with few columns: left core left^T.
struct LowRankChange
{
  Eigen::MatrixXd left; ///< (rows, k)
  Eigen::MatrixXd core; ///< (k, k)
};

/// An eigenproblem of two matrices as Spectra takes it: A x = t L L^T x becomes T y = t y with T = L^-1 A L^-T and
/// x = L^-T y. For modes A is M, K - shift M = L L^T and t = 1 / (w^2 - shift).
///
/// A standard problem: one product with A for each solve, and plain inner products. Rigid motions are projected out of
/// every product: they never enter the Krylov space.
class InverseOperator
{
public:
  using Scalar = double;

  /// Nothing is projected out. Both arguments outlive the operator.
  ///
  /// @param A  lower triangle
  InverseOperator(const SparseCholesky& factor, const SparseMatrix& A);

  /// Adds a change to A.
  void add(const LowRankChange& change);

  /// The operator of a system's modes. All arguments outlive it.
  InverseOperator(const SparseCholesky& factor, const System& system, const RigidBasis& rigid);

  [[nodiscard]] Eigen::Index rows() const { return A_.rows(); }
  [[nodiscard]] Eigen::Index cols() const { return rows(); }

  /// Ty = T y, free of rigid motion.
  void perform_op(const double* y, double* Ty) const;

  /// Takes rigid motion out of y.
  void project(Eigen::Ref<Eigen::VectorXd> y) const;

  [[nodiscard]] int num_solves() const { return num_solves_; }

private:
  const SparseCholesky& factor_;
  const SparseMatrix& A_;
  std::function<void(std::span<const double>, std::span<double>)> congruence_; // empty: by halves of a solve
  Eigen::MatrixXd rigid_;                                                      // orthonormal basis of L^T R
  LowRankChange change_;                                                       // of T
  mutable Eigen::VectorXd x_;                                                  // Spectra's interface is const
  mutable Eigen::VectorXd Ax_;
  mutable int num_solves_ = 0;
};

} // namespace plate
