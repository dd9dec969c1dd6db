// SPDX-License-Identifier: MPL-2.0
#include "small_modes.h"

#include <plate/core/error.h>

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>
#include <Spectra/SymEigsSolver.h>

#include <cmath>

namespace plate::reduced
{

namespace
{

using Factor = Eigen::LLT<Eigen::MatrixXd>;

/// Largest eigenvalues of L^-1 M L^-T, descending, with vectors.
struct Inverses
{
  Eigen::VectorXd values;
  Eigen::MatrixXd vectors;
};

Inverses all_then_some(const Factor& stiffness, Eigen::MatrixXd mass, Eigen::Index count)
{
  stiffness.matrixL().solveInPlace(mass);
  stiffness.matrixU().solveInPlace<Eigen::OnTheRight>(mass);
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen(mass);
  return {eigen.eigenvalues().tail(count).reverse(), eigen.eigenvectors().rightCols(count).rowwise().reverse()};
}

/// y = L^-1 M L^-T x as Spectra wants it.
class InverseProduct
{
public:
  using Scalar = double;
  InverseProduct(const Factor& stiffness, const Eigen::MatrixXd& mass) : stiffness_(stiffness), mass_(mass) {}
  [[nodiscard]] Eigen::Index rows() const { return mass_.rows(); }
  [[nodiscard]] Eigen::Index cols() const { return mass_.cols(); }
  void perform_op(const double* x, double* y) const
  {
    Eigen::Map<Eigen::VectorXd> out(y, rows());
    out = Eigen::Map<const Eigen::VectorXd>(x, rows());
    stiffness_.matrixU().solveInPlace(out);
    out = mass_.selfadjointView<Eigen::Lower>() * out.eval();
    stiffness_.matrixL().solveInPlace(out);
  }

private:
  const Factor& stiffness_;
  const Eigen::MatrixXd& mass_;
};

/// Whether as many eigenvalues lie above a place in the widest gap of those found: Lanczos may miss one of a pair.
///
/// By the law of inertia [Parlett1998] sec. 3.3.
bool none_missed(const Eigen::MatrixXd& stiffness, const Eigen::MatrixXd& mass, const Eigen::VectorXd& found)
{
  const Eigen::Index from = found.size() / 2;
  Eigen::Index gap = from;
  for (Eigen::Index i = from; i + 1 < found.size(); ++i)
    if (found(i) / found(i + 1) > found(gap) / found(gap + 1))
      gap = i;
  const double between = 1.0 / std::sqrt(found(gap) * found(gap + 1));
  const Eigen::LDLT<Eigen::MatrixXd> shifted(stiffness - between * mass);
  return (shifted.vectorD().array() < 0.0).count() == gap + 1;
}

Inverses some(const Factor& factor, const Eigen::MatrixXd& stiffness, const Eigen::MatrixXd& mass, Eigen::Index count)
{
  constexpr Eigen::Index few = 100; // up to here all eigenvalues take less time than some (measured)
  constexpr double tolerance = 1e-11;
  const Eigen::Index krylov_size = 2 * count + 20;
  if (mass.rows() <= few || mass.rows() <= krylov_size)
    return all_then_some(factor, mass, count);
  InverseProduct product(factor, mass);
  Spectra::SymEigsSolver<InverseProduct> lanczos(product, count, krylov_size);
  lanczos.init();
  lanczos.compute(Spectra::SortRule::LargestAlge, 100, tolerance);
  if (lanczos.info() != Spectra::CompInfo::Successful || !none_missed(stiffness, mass, lanczos.eigenvalues()))
    return all_then_some(factor, mass, count);
  return {lanczos.eigenvalues(), lanczos.eigenvectors()};
}

} // namespace

SmallModes small_modes(const Eigen::MatrixXd& stiffness, const Eigen::MatrixXd& mass, Eigen::Index num_rigid,
                       Eigen::Index num_modes)
{
  const Eigen::Index size = stiffness.rows() - num_rigid;
  // Rigid motions follow the elastic ones so that their momentum is zero: what is left of the mass is a Schur
  // complement.
  Eigen::MatrixXd rigid_share = mass.bottomLeftCorner(size, num_rigid).transpose();
  if (num_rigid > 0)
    mass.topLeftCorner(num_rigid, num_rigid).llt().solveInPlace(rigid_share);
  Eigen::MatrixXd elastic_mass = mass.bottomRightCorner(size, size).selfadjointView<Eigen::Lower>();
  elastic_mass.noalias() -= mass.bottomLeftCorner(size, num_rigid) * rigid_share;

  const Eigen::MatrixXd elastic_stiffness = stiffness.bottomRightCorner(size, size);
  const Factor factor(elastic_stiffness);
  if (factor.info() != Eigen::Success)
    throw NumericalFailure("ReducedModel: the reduced stiffness is not positive definite; try a smaller box");
  Inverses inverses = some(factor, elastic_stiffness, elastic_mass, num_modes);

  SmallModes modes;
  factor.matrixU().solveInPlace(inverses.vectors);
  inverses.vectors *= inverses.values.cwiseSqrt().cwiseInverse().asDiagonal();
  modes.eigenvalues = inverses.values.cwiseInverse();
  modes.vectors.resize(stiffness.rows(), num_modes);
  modes.vectors << -rigid_share * inverses.vectors, inverses.vectors;
  return modes;
}

} // namespace plate::reduced
