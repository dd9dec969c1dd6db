// SPDX-License-Identifier: MPL-2.0
#include "inverse_operator.h"

#include "symmetric_product.h"

#include <Eigen/Cholesky>
#include <Eigen/QR>

namespace plate
{

RigidBasis orthonormal_rigid_basis(const System& system)
{
  RigidBasis basis;
  basis.R = system.rigid_motions;
  basis.MR = symmetric_product(system.M, basis.R);
  for (int pass = 0; pass < 2 && basis.R.cols() > 0; ++pass) // the second pass repairs the rounding of the first
  {
    const Eigen::MatrixXd gram = basis.R.transpose() * basis.MR;
    const Eigen::MatrixXd L = gram.llt().matrixL();
    for (Eigen::MatrixXd* columns : {&basis.R, &basis.MR})
      *columns = L.triangularView<Eigen::Lower>().solve(columns->transpose()).transpose().eval();
  }
  return basis;
}

InverseOperator::InverseOperator(const SparseCholesky& factor, const SparseMatrix& A)
    : factor_(factor), A_(A), congruence_(factor.congruence(A)),
      rigid_(A.rows(), 0), change_{.left = Eigen::MatrixXd(A.rows(), 0), .core = Eigen::MatrixXd(0, 0)}, x_(A.rows()),
      Ax_(A.rows())
{
}

void InverseOperator::add(const LowRankChange& change)
{
  if (change.left.cols() == 0)
    return;
  change_ = {.left = Eigen::MatrixXd(change.left.rows(), change.left.cols()), .core = change.core};
  factor_.solve_lower(change.left, change_.left);
}

InverseOperator::InverseOperator(const SparseCholesky& factor, const System& system, const RigidBasis& rigid)
    : InverseOperator(factor, system.M)
{
  if (rigid.R.cols() == 0)
    return;
  rigid_.resize(rigid.R.rows(), rigid.R.cols());
  // (K - shift M) R = -shift M R, so L^-1 M R spans the same space as L^T R.
  factor_.solve_lower(rigid.MR, rigid_);
  const Eigen::HouseholderQR<Eigen::MatrixXd> qr(rigid_);
  rigid_ = qr.householderQ() * Eigen::MatrixXd::Identity(rigid_.rows(), rigid_.cols());
}

void InverseOperator::perform_op(const double* y, double* Ty) const
{
  Eigen::Map<Eigen::VectorXd> out(Ty, rows());
  if (congruence_)
  {
    const auto size = static_cast<std::size_t>(rows());
    congruence_({y, size}, {Ty, size});
  }
  else
  {
    factor_.solve_upper(Eigen::Map<const Eigen::VectorXd>(y, rows()), x_);
    Ax_.noalias() = A_.selfadjointView<Eigen::Lower>() * x_;
    factor_.solve_lower(Ax_, out);
  }
  if (change_.left.cols() > 0)
    out.noalias() += change_.left *
                     (change_.core * (change_.left.transpose() * Eigen::Map<const Eigen::VectorXd>(y, rows()))).eval();
  project(out);
  ++num_solves_;
}

void InverseOperator::project(Eigen::Ref<Eigen::VectorXd> y) const
{
  y.noalias() -= rigid_ * (rigid_.transpose() * y).eval();
}

} // namespace plate
