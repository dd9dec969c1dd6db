// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/modal.h>

#include "inverse_operator.h"
#include "sparse_combination.h"
#include "start_vector.h"
#include "symmetric_product.h"

#include <plate/core/error.h>

#include <Eigen/Eigenvalues>
#include <Spectra/SymEigsSolver.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <span>

namespace plate
{

namespace
{

constexpr double two_pi = 2.0 * std::numbers::pi;

/// Frequencies that K gives the rigid motions.
Eigen::VectorXd rigid_frequencies(const System& system, const RigidBasis& rigid)
{
  if (rigid.R.cols() == 0)
    return {};
  const Eigen::MatrixXd k = rigid.R.transpose() * symmetric_product(system.K, rigid.R);
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen(k, Eigen::EigenvaluesOnly);
  Eigen::VectorXd f = eigen.eigenvalues().cwiseAbs().cwiseSqrt() / two_pi;
  std::sort(f.begin(), f.end());
  return f;
}

/// Each shape gets the sign that makes its largest entry positive: the same input gives the same picture.
void fix_signs(Eigen::MatrixXd& shapes)
{
  for (auto shape : shapes.colwise())
  {
    Eigen::Index largest = 0;
    shape.cwiseAbs().maxCoeff(&largest);
    if (shape(largest) < 0.0)
      shape = -shape;
  }
}

Eigen::VectorXd residuals(const System& system, const ModalResult& modes)
{
  const Eigen::VectorXd lambda = (two_pi * modes.frequencies_hz).cwiseAbs2();
  const Eigen::MatrixXd inertia = symmetric_product(system.M, modes.shapes) * lambda.asDiagonal();
  const Eigen::MatrixXd elastic = symmetric_product(system.K, modes.shapes);
  return (elastic - inertia).colwise().norm().cwiseQuotient(inertia.colwise().norm()).transpose();
}

} // namespace

std::string ModalResult::summary() const
{
  return message(frequencies_hz.size(), " modes", status == Status::converged ? "" : " (not converged)", ", ",
                 rigid_frequencies_hz.size(), " rigid, largest residual ",
                 residuals.size() > 0 ? residuals.maxCoeff() : 0.0, ", ", num_solves, " solves");
}

const SparseCholesky& ModalSolver::factorise(const SparseMatrix& A, const DofMap& dofs)
{
  const std::span<const int> outer(A.outerIndexPtr(), static_cast<std::size_t>(A.outerSize()) + 1);
  const std::span<const int> inner(A.innerIndexPtr(), static_cast<std::size_t>(A.nonZeros()));
  if (factor_ && std::equal(outer.begin(), outer.end(), outer_.begin(), outer_.end()) &&
      std::equal(inner.begin(), inner.end(), inner_.begin(), inner_.end()))
  {
    factor_->factorise(A);
    return *factor_;
  }
  factor_.emplace(A, unknowns_by_node(dofs));
  outer_.assign(outer.begin(), outer.end());
  inner_.assign(inner.begin(), inner.end());
  return *factor_;
}

ModalResult ModalSolver::solve(const System& system, const ModalOptions& options)
{
  const auto n = static_cast<int>(system.K.rows());
  const int available = n - static_cast<int>(system.rigid_motions.cols());
  if (options.num_modes < 1 || options.num_modes >= available)
    throw InvalidInput(message("solve_modes: num_modes must be from 1 to ", available - 1, " for ", n,
                               " unknowns; got ", options.num_modes));
  if (!(options.tolerance > 0.0))
    throw InvalidInput(message("solve_modes: tolerance must be positive; got ", options.tolerance));

  const double shift = -std::pow(two_pi * system.typical_frequency_hz, 2);
  const SparseCholesky& factor = factorise(combination(system.K, -shift, system.M), system.dofs);
  const RigidBasis rigid = orthonormal_rigid_basis(system);
  InverseOperator inverse(factor, system, rigid);
  // Twice the modes and a dozen: restarts cost more than the longer basis (measured, benchmarks/README.md).
  const int krylov_size = std::min(available, 2 * options.num_modes + 12);
  Spectra::SymEigsSolver<InverseOperator> lanczos(inverse, options.num_modes, krylov_size);
  Eigen::VectorXd start = start_vector(n);
  inverse.project(start);
  lanczos.init(start.data());
  lanczos.compute(Spectra::SortRule::LargestAlge, options.max_restarts, options.tolerance);

  ModalResult result;
  result.status = lanczos.info() == Spectra::CompInfo::Successful ? Status::converged : Status::not_converged;
  const Eigen::VectorXd theta = lanczos.eigenvalues(); // 1 / (w^2 - shift)
  result.frequencies_hz = (theta.cwiseInverse().array() + shift).cwiseMax(0.0).sqrt() / two_pi;
  result.shapes.resize(n, theta.size());
  factor.solve_upper(lanczos.eigenvectors(), result.shapes);
  result.shapes *= theta.cwiseSqrt().cwiseInverse().asDiagonal();
  fix_signs(result.shapes);
  result.residuals = residuals(system, result);
  result.rigid_frequencies_hz = rigid_frequencies(system, rigid);
  result.num_solves = inverse.num_solves();
  return result;
}

ModalResult solve_modes(const System& system, const ModalOptions& options)
{
  return ModalSolver().solve(system, options);
}

} // namespace plate
