// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/buckling.h>

#include "held_matrix.h"
#include "inverse_operator.h"
#include "sparse_combination.h"
#include "start_vector.h"
#include "symmetric_product.h"

#include <plate/core/error.h>

#include <Spectra/SymEigsSolver.h>

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

/// Largest eigenvalues t of A x = t K x.
struct Largest
{
  Eigen::VectorXd values;  // descending
  Eigen::MatrixXd vectors; // X with X^T K X = I
  bool converged;
};

/// The geometric stiffness under a load that turns with the plate where this can move: P^T KG P, P taking the rigid
/// motion from a state. Under a load that keeps its direction a plate that is held by nothing would tip over.
class FollowingStiffness
{
public:
  FollowingStiffness(const System& system, const SparseMatrix& KG)
      : KG_(KG), rigid_(orthonormal_rigid_basis(system)), turned_(symmetric_product(KG, rigid_.R))
  {
  }

  /// What it has beyond KG, times a factor.
  [[nodiscard]] LowRankChange change(double factor) const
  {
    const Eigen::Index k = rigid_.R.cols();
    if (k == 0)
      return {.left = Eigen::MatrixXd(KG_.rows(), 0), .core = Eigen::MatrixXd(0, 0)};
    LowRankChange out = {.left = Eigen::MatrixXd(KG_.rows(), 2 * k), .core = Eigen::MatrixXd::Zero(2 * k, 2 * k)};
    out.left << rigid_.MR, turned_;
    out.core.topLeftCorner(k, k) = factor * rigid_.R.transpose() * turned_;
    out.core.topRightCorner(k, k) = out.core.bottomLeftCorner(k, k) = -factor * Eigen::MatrixXd::Identity(k, k);
    return out;
  }

  [[nodiscard]] Eigen::MatrixXd product(const Eigen::MatrixXd& x) const
  {
    Eigen::MatrixXd out = symmetric_product(KG_, x);
    if (const LowRankChange rest = change(1.0); rest.left.cols() > 0)
      out += rest.left * (rest.core * (rest.left.transpose() * x));
    return out;
  }

private:
  const SparseMatrix& KG_;
  RigidBasis rigid_;
  Eigen::MatrixXd turned_; // KG R
};

/// How the Lanczos process runs.
struct Search
{
  Spectra::SortRule largest;
  int count;
  int krylov_size;
  double tolerance;
  int max_restarts;
};

Largest largest_eigenvalues(const SparseCholesky& factor, const SparseMatrix& A, const LowRankChange& change,
                            const Search& search)
{
  InverseOperator inverse(factor, A);
  inverse.add(change);
  const int krylov_size = std::min(static_cast<int>(A.rows()), search.krylov_size);
  Spectra::SymEigsSolver<InverseOperator> lanczos(inverse, search.count, krylov_size);
  const Eigen::VectorXd start = start_vector(A.rows());
  lanczos.init(start.data());
  lanczos.compute(search.largest, search.max_restarts, search.tolerance, Spectra::SortRule::LargestAlge);
  Largest found = {.values = lanczos.eigenvalues(),
                   .vectors = Eigen::MatrixXd(A.rows(), lanczos.eigenvalues().size()),
                   .converged = lanczos.info() == Spectra::CompInfo::Successful};
  factor.solve_upper(lanczos.eigenvectors(), found.vectors);
  return found;
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

BucklingResult solve_buckling(const StaticSolver& plate, const SparseMatrix& KG, const BucklingOptions& options)
{
  const System& system = plate.system();
  const auto n = static_cast<int>(system.K.rows());
  if (options.num_modes < 1 || options.num_modes >= n)
    throw InvalidInput(message("buckling: num_modes must be from 1 to ", n - 1, "; got ", options.num_modes));
  if (KG.rows() != n)
    throw InvalidInput(message("buckling: the geometric stiffness has ", KG.rows(), " rows, the plate ", n,
                               " unknowns; was it made for another model?"));
  if (is_rounding(KG, system.K))
    return {.factors = {}, .shapes = Eigen::MatrixXd(n, 0), .residuals = {}, .status = Status::converged};
  BucklingResult result;
  const FollowingStiffness following(system, KG);
  // The strongest effect gives a scale only: two digits of it and a short basis will do.
  const Largest strongest = largest_eigenvalues(plate.factor(), KG, following.change(1.0),
                                                {.largest = Spectra::SortRule::LargestMagn,
                                                 .count = 1,
                                                 .krylov_size = 8,
                                                 .tolerance = 1e-2,
                                                 .max_restarts = options.max_restarts});
  if (!strongest.converged)
    return result;
  // A load that pulls everywhere has its largest inverse factors crowded below zero, where no relative accuracy is to
  // be had: a shift by the strongest effect of the load gives the accuracy a scale.
  const double scale = std::abs(strongest.values(0));
  const SparseMatrix K = held_matrix(system);
  const SparseMatrix shifted = combination(scale * K, -1.0, KG);
  const Largest largest = largest_eigenvalues(plate.factor(), shifted, following.change(-1.0),
                                              {.largest = Spectra::SortRule::LargestAlge,
                                               .count = options.num_modes,
                                               .krylov_size = 4 * options.num_modes + 20,
                                               .tolerance = options.tolerance,
                                               .max_restarts = options.max_restarts});
  if (!largest.converged)
    return result;
  result.status = Status::converged;
  const Eigen::VectorXd inverse = largest.values.array() - scale;
  const double least = 1e-4 * scale; // a hundred times the accuracy
  const auto num_positive = (inverse.array() > least).count();
  result.factors = inverse.head(num_positive).cwiseInverse();
  result.shapes = largest.vectors.leftCols(num_positive);
  const Eigen::MatrixXd elastic = symmetric_product(K, result.shapes);
  const Eigen::MatrixXd geometric = following.product(result.shapes);
  result.residuals = (elastic + geometric * result.factors.asDiagonal())
                         .colwise()
                         .norm()
                         .cwiseQuotient(elastic.colwise().norm())
                         .transpose();
  return result;
}

BucklingResult solve_buckling(const System& system, const SparseMatrix& KG, const BucklingOptions& options)
{
  return solve_buckling(StaticSolver(system), KG, options);
}

System prestressed(const System& system, const SparseMatrix& KG)
{
  System loaded = system;
  combination(system.K, 1.0, KG).swap(loaded.K);
  return loaded;
}

} // namespace plate
