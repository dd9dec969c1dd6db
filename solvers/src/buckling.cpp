// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/buckling.h>

#include "held_matrix.h"
#include "start_vector.h"

#include <plate/core/error.h>
#include <plate/solvers/sparse_cholesky.h>

#include <Spectra/SymGEigsSolver.h>

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

/// y = A x as Spectra wants it.
class SymmetricProduct
{
public:
  using Scalar = double;
  explicit SymmetricProduct(const SparseMatrix& lower) : lower_(lower) {}
  [[nodiscard]] Eigen::Index rows() const { return lower_.rows(); }
  [[nodiscard]] Eigen::Index cols() const { return lower_.cols(); }
  void perform_op(const double* x, double* y) const
  {
    Eigen::Map<Eigen::VectorXd>(y, rows()).noalias() =
        lower_.selfadjointView<Eigen::Lower>() * Eigen::Map<const Eigen::VectorXd>(x, rows());
  }

private:
  const SparseMatrix& lower_; // outlives the solve
};

/// K x and its inverse.
class StiffnessAndInverse
{
public:
  using Scalar = double;
  StiffnessAndInverse(const SparseMatrix& lower, const SparseCholesky& factor) : lower_(lower), factor_(factor) {}
  [[nodiscard]] Eigen::Index rows() const { return lower_.rows(); }
  [[nodiscard]] Eigen::Index cols() const { return lower_.cols(); }
  void perform_op(const double* x, double* y) const
  {
    Eigen::Map<Eigen::VectorXd>(y, rows()).noalias() =
        lower_.selfadjointView<Eigen::Lower>() * Eigen::Map<const Eigen::VectorXd>(x, rows());
  }
  void solve(const double* x, double* y) const
  {
    Eigen::Map<Eigen::VectorXd> out(y, rows());
    factor_.solve(Eigen::Map<const Eigen::VectorXd>(x, rows()), out);
  }

private:
  const SparseMatrix& lower_; // outlives the solve
  const SparseCholesky& factor_;
};

/// Largest eigenvalues of a matrix with K.
struct Largest
{
  Eigen::VectorXd values; // descending
  Eigen::MatrixXd vectors;
  bool converged;
};

Largest largest_eigenvalues(const SparseMatrix& lower, StiffnessAndInverse& stiffness, int count,
                            Spectra::SortRule rule, const BucklingOptions& options)
{
  SymmetricProduct product(lower);
  const int krylov_size = std::min(static_cast<int>(lower.rows()), 4 * count + 20);
  Spectra::SymGEigsSolver<SymmetricProduct, StiffnessAndInverse, Spectra::GEigsMode::RegularInverse> lanczos(
      product, stiffness, count, krylov_size);
  const Eigen::VectorXd start = start_vector(lower.rows());
  lanczos.init(start.data());
  lanczos.compute(rule, options.max_restarts, options.tolerance, Spectra::SortRule::LargestAlge);
  return {.values = lanczos.eigenvalues(),
          .vectors = lanczos.eigenvectors(),
          .converged = lanczos.info() == Spectra::CompInfo::Successful};
}

/// Whether a load makes no forces in the surface but for rounding, as one square to a flat plate.
bool is_rounding(const SparseMatrix& KG, const SparseMatrix& K)
{
  constexpr double rounding = 1e-14;
  const auto greatest = [](const SparseMatrix& A) -> double
  { return Eigen::Map<const Eigen::VectorXd>(A.valuePtr(), A.nonZeros()).cwiseAbs().maxCoeff(); };
  return greatest(KG) <= rounding * greatest(K);
}

} // namespace

BucklingResult solve_buckling(const System& system, const SparseMatrix& KG, const BucklingOptions& options)
{
  const auto n = static_cast<int>(system.K.rows());
  if (options.num_modes < 1 || options.num_modes >= n)
    throw InvalidInput(message("buckling: num_modes must be from 1 to ", n - 1, "; got ", options.num_modes));
  if (KG.rows() != n)
    throw InvalidInput(message("buckling: the geometric stiffness has ", KG.rows(), " rows, the plate ", n,
                               " unknowns; was it made for another model?"));
  if (is_rounding(KG, system.K))
    return {.factors = {}, .shapes = Eigen::MatrixXd(n, 0), .residuals = {}, .status = Status::converged};
  const SparseMatrix K = held_matrix(system);
  const SparseCholesky factor(K, unknowns_by_node(system.dofs));
  StiffnessAndInverse stiffness(K, factor);
  BucklingResult result;
  const Largest strongest = largest_eigenvalues(KG, stiffness, 1, Spectra::SortRule::LargestMagn, options);
  if (!strongest.converged)
    return result;
  // A load that pulls everywhere has its largest inverse factors crowded below zero, where no relative accuracy is to
  // be had: a shift by the strongest effect of the load gives the accuracy a scale.
  const double scale = std::abs(strongest.values(0));
  const SparseMatrix shifted = scale * K - KG;
  const Largest largest =
      largest_eigenvalues(shifted, stiffness, options.num_modes, Spectra::SortRule::LargestAlge, options);
  if (!largest.converged)
    return result;
  result.status = Status::converged;
  const Eigen::VectorXd inverse = largest.values.array() - scale;
  const double least = 1e-4 * scale; // a hundred times the accuracy
  const auto num_positive = (inverse.array() > least).count();
  result.factors = inverse.head(num_positive).cwiseInverse();
  result.shapes = largest.vectors.leftCols(num_positive);
  const Eigen::MatrixXd elastic = K.selfadjointView<Eigen::Lower>() * result.shapes;
  const Eigen::MatrixXd geometric = KG.selfadjointView<Eigen::Lower>() * result.shapes;
  result.residuals = (elastic + geometric * result.factors.asDiagonal())
                         .colwise()
                         .norm()
                         .cwiseQuotient(elastic.colwise().norm())
                         .transpose();
  return result;
}

System prestressed(const System& system, const SparseMatrix& KG)
{
  System loaded = system;
  loaded.K += KG;
  return loaded;
}

} // namespace plate
