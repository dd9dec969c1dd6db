// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/modal.h>

#include <plate/core/error.h>
#include <plate/solvers/sparse_cholesky.h>

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>
#include <Spectra/SymGEigsShiftSolver.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>

namespace plate
{

namespace
{

constexpr double two_pi = 2.0 * std::numbers::pi;

/// y = M x as Spectra wants it.
class MassProduct
{
public:
  using Scalar = double;
  explicit MassProduct(const SparseMatrix& lower) : lower_(lower) {}
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

/// Basis R of the rigid motions with R^T M R = I, and M R beside it.
struct RigidBasis
{
  Eigen::MatrixXd R;
  Eigen::MatrixXd MR;
};

RigidBasis orthonormal_rigid_basis(const System& system)
{
  const auto M = system.M.selfadjointView<Eigen::Lower>();
  RigidBasis basis;
  basis.R = system.rigid_motions;
  for (int pass = 0; pass < 2 && basis.R.cols() > 0; ++pass) // the second pass repairs the rounding of the first
  {
    const Eigen::MatrixXd gram = basis.R.transpose() * (M * basis.R);
    const Eigen::MatrixXd L = gram.llt().matrixL();
    basis.R = L.triangularView<Eigen::Lower>().solve(basis.R.transpose()).transpose().eval();
  }
  basis.MR = M * basis.R;
  return basis;
}

/// y = P (K - shift M)^-1 x, where P takes rigid motions out: they never enter the Krylov space.
class ProjectedInverse
{
public:
  using Scalar = double;
  ProjectedInverse(const SparseCholesky& factor, const RigidBasis& rigid) : factor_(factor), rigid_(rigid) {}
  [[nodiscard]] Eigen::Index rows() const { return rigid_.R.rows(); }
  [[nodiscard]] Eigen::Index cols() const { return rows(); }
  void set_shift(double) const {} // the factor knows its shift
  void perform_op(const double* x, double* y) const
  {
    Eigen::Map<Eigen::VectorXd> out(y, rows());
    factor_.solve(Eigen::Map<const Eigen::VectorXd>(x, rows()), out);
    out.noalias() -= rigid_.R * (rigid_.MR.transpose() * out).eval();
    ++num_solves_;
  }
  [[nodiscard]] int num_solves() const { return num_solves_; }

private:
  const SparseCholesky& factor_;
  const RigidBasis& rigid_;
  mutable int num_solves_ = 0;
};

/// Frequencies that K gives the rigid motions.
Eigen::VectorXd rigid_frequencies(const System& system, const RigidBasis& rigid)
{
  if (rigid.R.cols() == 0)
    return {};
  const Eigen::MatrixXd k = rigid.R.transpose() * (system.K.selfadjointView<Eigen::Lower>() * rigid.R);
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen(k, Eigen::EigenvaluesOnly);
  Eigen::VectorXd f = eigen.eigenvalues().cwiseAbs().cwiseSqrt() / two_pi;
  std::sort(f.begin(), f.end());
  return f;
}

/// A start vector without symmetry, so that no mode is missed, and without rigid motion; the same on every run.
Eigen::VectorXd start_vector(const RigidBasis& rigid)
{
  Eigen::VectorXd v(rigid.R.rows());
  std::uint32_t state = 12345;
  for (double& value : v)
  {
    state = 1664525u * state + 1013904223u; // linear congruential, [Knuth1998] sec. 3.3.4
    value = static_cast<double>(state) / 4294967296.0 - 0.5;
  }
  v.noalias() -= rigid.R * (rigid.MR.transpose() * v).eval();
  return v;
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
  const Eigen::MatrixXd inertia = (system.M.selfadjointView<Eigen::Lower>() * modes.shapes) * lambda.asDiagonal();
  const Eigen::MatrixXd elastic = system.K.selfadjointView<Eigen::Lower>() * modes.shapes;
  return (elastic - inertia).colwise().norm().cwiseQuotient(inertia.colwise().norm()).transpose();
}

} // namespace

std::string ModalResult::summary() const
{
  return message(frequencies_hz.size(), " modes", status == Status::converged ? "" : " (not converged)", ", ",
                 rigid_frequencies_hz.size(), " rigid, largest residual ",
                 residuals.size() > 0 ? residuals.maxCoeff() : 0.0, ", ", num_solves, " solves");
}

ModalResult solve_modes(const System& system, const ModalOptions& options)
{
  const auto n = static_cast<int>(system.K.rows());
  const int available = n - static_cast<int>(system.rigid_motions.cols());
  if (options.num_modes < 1 || options.num_modes >= available)
    throw InvalidInput(message("solve_modes: num_modes must be from 1 to ", available - 1, " for ", n,
                               " unknowns; got ", options.num_modes));
  if (!(options.tolerance > 0.0))
    throw InvalidInput(message("solve_modes: tolerance must be positive; got ", options.tolerance));

  const double shift = -std::pow(two_pi * system.typical_frequency_hz, 2);
  const SparseCholesky factor(system.K - shift * system.M, unknowns_by_node(system.dofs));
  const RigidBasis rigid = orthonormal_rigid_basis(system);
  ProjectedInverse inverse(factor, rigid);
  MassProduct mass(system.M);
  // Twice the modes and a dozen: restarts cost more than the longer basis (measured, benchmarks/README.md).
  const int krylov_size = std::min(available, 2 * options.num_modes + 12);
  Spectra::SymGEigsShiftSolver<ProjectedInverse, MassProduct, Spectra::GEigsMode::ShiftInvert> lanczos(
      inverse, mass, options.num_modes, krylov_size, shift);
  const Eigen::VectorXd start = start_vector(rigid);
  lanczos.init(start.data());
  lanczos.compute(Spectra::SortRule::LargestMagn, options.max_restarts, options.tolerance,
                  Spectra::SortRule::SmallestAlge);

  ModalResult result;
  result.status = lanczos.info() == Spectra::CompInfo::Successful ? Status::converged : Status::not_converged;
  result.frequencies_hz = lanczos.eigenvalues().cwiseMax(0.0).cwiseSqrt() / two_pi;
  result.shapes = lanczos.eigenvectors();
  fix_signs(result.shapes);
  result.residuals = residuals(system, result);
  result.rigid_frequencies_hz = rigid_frequencies(system, rigid);
  result.num_solves = inverse.num_solves();
  return result;
}

} // namespace plate
