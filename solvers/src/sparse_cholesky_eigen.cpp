// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/sparse_cholesky.h>

#include <plate/core/error.h>

#include <Eigen/SparseCholesky>

namespace plate
{

struct SparseCholesky::Implementation
{
  Eigen::SimplicialLLT<SparseMatrix, Eigen::Lower> factor;
};

SparseCholesky::SparseCholesky(const SparseMatrix& lower, const std::vector<std::vector<int>>&)
    : implementation_(std::make_unique<Implementation>())
{
  implementation_->factor.analyzePattern(lower);
  factorise(lower);
}

SparseCholesky::~SparseCholesky() = default;
SparseCholesky::SparseCholesky(SparseCholesky&&) noexcept = default;
SparseCholesky& SparseCholesky::operator=(SparseCholesky&&) noexcept = default;

void SparseCholesky::factorise(const SparseMatrix& lower)
{
  implementation_->factor.factorize(lower);
  if (implementation_->factor.info() != Eigen::Success)
    throw NumericalFailure(
        message("factorisation of a matrix of ", lower.rows(), " unknowns failed: it is not positive definite"));
}

void SparseCholesky::solve(const Eigen::Ref<const Eigen::MatrixXd>& b, Eigen::Ref<Eigen::MatrixXd> x) const
{
  x = implementation_->factor.solve(b);
}

void SparseCholesky::solve_lower(const Eigen::Ref<const Eigen::MatrixXd>& b, Eigen::Ref<Eigen::MatrixXd> x) const
{
  x = implementation_->factor.permutationP() * b;
  implementation_->factor.matrixL().solveInPlace(x);
}

void SparseCholesky::solve_upper(const Eigen::Ref<const Eigen::MatrixXd>& b, Eigen::Ref<Eigen::MatrixXd> x) const
{
  Eigen::MatrixXd permuted = b;
  implementation_->factor.matrixU().solveInPlace(permuted);
  x = implementation_->factor.permutationPinv() * permuted;
}

std::function<void(std::span<const double>, std::span<double>)> SparseCholesky::congruence(const SparseMatrix&) const
{
  return {};
}

} // namespace plate
