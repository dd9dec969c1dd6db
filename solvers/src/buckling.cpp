// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/buckling.h>

#include "held_matrix.h"
#include "start_vector.h"

#include <plate/core/error.h>
#include <plate/solvers/sparse_cholesky.h>

#include <Spectra/SymGEigsSolver.h>

#include <algorithm>

namespace plate
{

namespace
{

/// y = -KG x as Spectra wants it.
class SofteningProduct
{
public:
  using Scalar = double;
  explicit SofteningProduct(const SparseMatrix& lower) : lower_(lower) {}
  [[nodiscard]] Eigen::Index rows() const { return lower_.rows(); }
  [[nodiscard]] Eigen::Index cols() const { return lower_.cols(); }
  void perform_op(const double* x, double* y) const
  {
    Eigen::Map<Eigen::VectorXd>(y, rows()).noalias() =
        -(lower_.selfadjointView<Eigen::Lower>() * Eigen::Map<const Eigen::VectorXd>(x, rows()));
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

/// Whether a load makes no forces in the surface but for rounding, as one square to a flat plate.
bool is_rounding(const SparseMatrix& KG, const SparseMatrix& K)
{
  constexpr double rounding = 1e-14;
  const auto greatest = [](const SparseMatrix& A)
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
  SofteningProduct softening(KG);
  StiffnessAndInverse stiffness(K, factor);
  const int krylov_size = std::min(n, 4 * options.num_modes + 20);
  Spectra::SymGEigsSolver<SofteningProduct, StiffnessAndInverse, Spectra::GEigsMode::RegularInverse> lanczos(
      softening, stiffness, options.num_modes, krylov_size);
  const Eigen::VectorXd start = start_vector(n);
  lanczos.init(start.data());
  lanczos.compute(Spectra::SortRule::LargestAlge, options.max_restarts, options.tolerance,
                  Spectra::SortRule::LargestAlge);

  BucklingResult result;
  result.status = lanczos.info() == Spectra::CompInfo::Successful ? Status::converged : Status::not_converged;
  const Eigen::VectorXd inverse = lanczos.eigenvalues();
  // A load that pulls everywhere leaves rounding about zero.
  const double least = 1e-12 * inverse.cwiseAbs().maxCoeff();
  const auto num_positive = (inverse.array() > least).count();
  result.factors = inverse.head(num_positive).cwiseInverse();
  result.shapes = lanczos.eigenvectors().leftCols(num_positive);
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
