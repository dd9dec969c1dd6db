// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/static_shapes.h>

#include "inverse_operator.h"
#include "symmetric_product.h"

#include <plate/core/error.h>

#include <Eigen/Eigenvalues>

#include <numbers>
#include <vector>

namespace plate
{
namespace
{

/// Shapes below this share of the energy of the answer to a load are rounding.
constexpr double least_share = 1e-10;

/// Takes rigid motions and modes out of shapes, twice against rounding.
void make_orthogonal(const System& system, const RigidBasis& rigid, const ModalResult& modes, Eigen::MatrixXd& x)
{
  for (int pass = 0; pass < 2; ++pass)
  {
    if (rigid.R.cols() > 0)
      x -= rigid.R * (rigid.MR.transpose() * x).eval();
    x -= modes.shapes * (modes.shapes.transpose() * symmetric_product(system.M, x)).eval();
  }
}

} // namespace

ModalResult with_static_shapes(const ModalSolver& solver, const System& system, const ModalResult& modes,
                               const Eigen::MatrixXd& loads)
{
  if (loads.rows() != system.K.rows() || modes.shapes.rows() != system.K.rows())
    throw InvalidInput(message("with_static_shapes: modes and loads must have a row for each of ", system.K.rows(),
                               " unknowns; got ", modes.shapes.rows(), " and ", loads.rows()));
  Eigen::MatrixXd x(loads.rows(), loads.cols());
  // Of the shifted stiffness, so that a free body has an answer: which shape answers is hardly changed, and how much is
  // found below.
  solver.factor(system).solve(loads, x);
  const auto mass_of = [&](const Eigen::MatrixXd& shapes) -> Eigen::MatrixXd
  { return shapes.transpose() * symmetric_product(system.M, shapes); };
  const Eigen::VectorXd whole = mass_of(x).diagonal();
  make_orthogonal(system, orthonormal_rigid_basis(system), modes, x);
  std::vector<Eigen::Index> kept;
  const Eigen::MatrixXd mass = mass_of(x);
  for (Eigen::Index i = 0; i < x.cols(); ++i)
    if (mass(i, i) > least_share * whole(i))
      kept.push_back(i);
  if (kept.empty())
    return modes;
  const Eigen::MatrixXd shapes = x(Eigen::all, kept) * mass.diagonal()(kept).cwiseSqrt().cwiseInverse().asDiagonal();
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> independent(mass_of(shapes));
  const auto num_independent = (independent.eigenvalues().array() > 1e-8).count();
  const Eigen::MatrixXd basis = shapes * independent.eigenvectors().rightCols(num_independent) *
                                independent.eigenvalues().tail(num_independent).cwiseSqrt().cwiseInverse().asDiagonal();
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> energy(basis.transpose() * symmetric_product(system.K, basis));

  ModalResult all = modes;
  const Eigen::Index n = modes.shapes.cols();
  all.shapes.conservativeResize(Eigen::NoChange, n + num_independent);
  all.shapes.rightCols(num_independent) = basis * energy.eigenvectors();
  all.frequencies_hz.conservativeResize(n + num_independent);
  all.frequencies_hz.tail(num_independent) = energy.eigenvalues().cwiseMax(0.0).cwiseSqrt() / (2.0 * std::numbers::pi);
  return all;
}

Eigen::MatrixXd unit_rigid_motions(const System& system)
{
  return orthonormal_rigid_basis(system).R;
}

} // namespace plate
