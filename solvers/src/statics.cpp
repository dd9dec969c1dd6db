// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/statics.h>

#include "held_matrix.h"
#include "symmetric_product.h"

#include <plate/core/error.h>

#include <Eigen/LU>

#include <cmath>

namespace plate
{

namespace
{

using LongVector = Eigen::Matrix<long double, Eigen::Dynamic, 1>;

constexpr double balance_tolerance = 1e-9; // of the load: rounding of loads that are meant to balance

} // namespace

std::string StaticResult::summary() const
{
  return message("strain energy ", energy, " J, work ", work, " J, residual ", residual);
}

struct StaticSolver::Implementation
{
  const System& system;
  SparseCholesky factor;

  explicit Implementation(const System& s) : system(s), factor(held_matrix(s), unknowns_by_node(s.dofs)) {}

  /// K x from the lower triangle.
  [[nodiscard]] LongVector product(const LongVector& x) const
  {
    LongVector y = LongVector::Zero(x.size());
    for (int column = 0; column < system.K.outerSize(); ++column)
    {
      const long double own = x(column);
      long double sum = 0.0L;
      for (SparseMatrix::InnerIterator entry(system.K, column); entry; ++entry)
      {
        sum += entry.value() * x(entry.row());
        if (entry.row() != column)
          y(entry.row()) += entry.value() * own;
      }
      y(column) += sum;
    }
    return y;
  }

  void take_out_rigid_motions(Eigen::VectorXd& x) const
  {
    const Eigen::MatrixXd& R = system.rigid_motions;
    if (R.cols() == 0)
      return;
    const Eigen::MatrixXd MR = symmetric_product(system.M, R);
    x -= R * (R.transpose() * MR).partialPivLu().solve(MR.transpose() * x);
  }
};

StaticSolver::StaticSolver(const System& system) : implementation_(std::make_unique<Implementation>(system)) {}
StaticSolver::~StaticSolver() = default;
StaticSolver::StaticSolver(StaticSolver&&) noexcept = default;
StaticSolver& StaticSolver::operator=(StaticSolver&&) noexcept = default;

StaticResult StaticSolver::solve(const Eigen::VectorXd& load) const
{
  const Implementation& my = *implementation_;
  if (load.size() != my.system.K.rows())
    throw InvalidInput(message("statics: the load has ", load.size(), " entries, the plate ", my.system.K.rows(),
                               " unknowns; was it made for another model?"));
  StaticResult result = {.x = Eigen::VectorXd::Zero(load.size())};
  const double size = load.norm();
  if (size == 0.0)
    return result;
  if (const double left = imbalance(my.system, load); left > balance_tolerance)
    throw InvalidInput(message("statics: the supports leave the plate ", my.system.rigid_motions.cols(),
                               " rigid motions and the load would set it moving (", 100.0 * left,
                               " % of it are not balanced); hold the plate or balance the load"));
  const LongVector f = load.cast<long double>();
  LongVector x = LongVector::Zero(load.size());
  LongVector elastic = x;
  Eigen::VectorXd step(load.size());
  constexpr int solves = 2; // the second takes away the rounding of the first
  for (int i = 0; i < solves; ++i)
  {
    const Eigen::VectorXd left = (f - elastic).cast<double>();
    my.factor.solve(left, step);
    my.take_out_rigid_motions(step); // K carries them but for rounding, which grows with them
    x += step.cast<long double>();
    elastic = my.product(x);
  }
  result.energy = static_cast<double>(0.5L * x.dot(elastic));
  result.work = static_cast<double>(f.dot(x));
  result.residual = static_cast<double>((elastic - f).norm()) / size;
  result.x = x.cast<double>();
  if (!result.x.allFinite())
    throw NumericalFailure("statics: the solution is not finite; is the plate held too loosely?");
  return result;
}

Eigen::VectorXd StaticSolver::compliances(const Eigen::MatrixXd& loads) const
{
  Eigen::MatrixXd half(loads.rows(), loads.cols()); // b^T K^-1 b = |L^-1 b|^2
  implementation_->factor.solve_lower(loads, half);
  return half.colwise().squaredNorm().transpose();
}

const System& StaticSolver::system() const
{
  return implementation_->system;
}

const SparseCholesky& StaticSolver::factor() const
{
  return implementation_->factor;
}

double imbalance(const System& system, const Eigen::VectorXd& load)
{
  double left = 0.0;
  double whole = 0.0;
  for (const auto& motion : system.rigid_motions.colwise())
  {
    const double size = motion.cwiseAbs().maxCoeff();
    left = std::max(left, std::abs(motion.dot(load)) / size);
    whole = std::max(whole, motion.cwiseAbs().dot(load.cwiseAbs()) / size);
  }
  return whole > 0.0 ? left / whole : 0.0;
}

StaticResult solve_statics(const System& system, const Eigen::VectorXd& load)
{
  return StaticSolver(system).solve(load);
}

Eigen::VectorXd balanced_by_inertia(const System& system, const Eigen::VectorXd& load)
{
  const Eigen::MatrixXd& R = system.rigid_motions;
  if (R.cols() == 0)
    return load;
  const Eigen::MatrixXd MR = symmetric_product(system.M, R);
  const Eigen::MatrixXd gram = R.transpose() * MR;
  Eigen::VectorXd balanced = load;
  for (int pass = 0; pass < 2; ++pass) // the second takes away the rounding of the first
    balanced -= MR * gram.partialPivLu().solve(R.transpose() * balanced);
  return balanced;
}

Balance support_balance(const Model& model, const DofMap& dofs, const NodalUnknowns& displacements,
                        const NodalUnknowns& loads, const std::vector<SupportBed>& beds)
{
  Balance balance;
  balance.reactions = on_held(dofs, held_elastic_forces(model, dofs, displacements) - loads);
  for (const SupportBed& bed : beds)
    balance.reactions += support_forces(model.mesh, bed, displacements);
  balance.load = resultant(model, loads);
  balance.reaction = resultant(model, balance.reactions);
  const double forces =
      loads.topRows<3>().colwise().norm().sum() + balance.reactions.topRows<3>().colwise().norm().sum();
  if (forces > 0.0)
    balance.error = (balance.load + balance.reaction).head<3>().norm() / forces;
  return balance;
}

} // namespace plate
