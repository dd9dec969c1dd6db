// SPDX-License-Identifier: MPL-2.0
#include "lanczos_modes.h"

#include "inverse_operator.h"
#include "start_vector.h"
#include "symmetric_product.h"

#include <plate/core/error.h>
#include <plate/core/units.h>

#include <Eigen/Eigenvalues>
#include <Spectra/SymEigsSolver.h>

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

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

/// Modes that the unknowns can carry beside the rigid motions.
int num_available(const System& system)
{
  return static_cast<int>(system.K.rows() - system.rigid_motions.cols());
}

Eigen::VectorXd residuals(const System& system, const ModalResult& modes)
{
  const Eigen::VectorXd lambda = (two_pi * modes.frequencies_hz).cwiseAbs2();
  const Eigen::MatrixXd inertia = symmetric_product(system.M, modes.shapes) * lambda.asDiagonal();
  const Eigen::MatrixXd elastic = symmetric_product(system.K, modes.shapes);
  return (elastic - inertia).colwise().norm().cwiseQuotient(inertia.colwise().norm()).transpose();
}

} // namespace

void check_modal_options(const System& system, const ModalOptions& options)
{
  const int available = num_available(system);
  if (options.num_modes < 1 || options.num_modes >= available)
    throw InvalidInput(message("solve_modes: num_modes must be from 1 to ", available - 1, " for ", system.K.rows(),
                               " unknowns; got ", options.num_modes));
  if (!(options.tolerance > 0.0))
    throw InvalidInput(message("solve_modes: tolerance must be positive; got ", options.tolerance));
}

double modal_shift(const System& system)
{
  return -std::pow(two_pi * system.typical_frequency_hz, 2);
}

ModalResult lanczos_modes(const System& system, const SparseCholesky& factor, const ModalOptions& options)
{
  const auto n = static_cast<int>(system.K.rows());
  const double shift = modal_shift(system);
  const RigidBasis rigid = orthonormal_rigid_basis(system);
  InverseOperator inverse(factor, system, rigid);
  // Twice the modes and a dozen: restarts cost more than the longer basis (measured, benchmarks/README.md).
  const int krylov_size = std::min(num_available(system), 2 * options.num_modes + 12);
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

} // namespace plate
