// SPDX-License-Identifier: MPL-2.0
#include <plate/core/units.h>
#include <plate/solvers/air_modes.h>

#include "../symmetric_product.h"

#include <plate/core/error.h>
#include <plate/post/mode_compare.h>
#include <plate/post/surface_integral.h>
#include <plate/solvers/air_mass.h>

#include <Eigen/Eigenvalues>

#include <algorithm>
#include <vector>

namespace plate
{

namespace
{

/// Modes in vacuo beyond those asked for: with eight the rest is worth less than 1e-5 of a frequency (air_modes_test).
constexpr int num_further_modes = 8;

} // namespace

ModalResult modes_in_air(const Model& model, const System& system, const ModalResult& in_vacuo, int num_modes)
{
  const Eigen::Index num_elastic = in_vacuo.frequencies_hz.size();
  const Eigen::Index num_rigid = system.rigid_motions.cols();
  if (num_modes < 1 || num_modes > num_elastic)
    throw InvalidInput(
        message("modes_in_air: num_modes must be from 1 to the ", num_elastic, " given; got ", num_modes));
  Eigen::MatrixXd basis(system.M.rows(), num_rigid + num_elastic);
  basis << system.rigid_motions, in_vacuo.shapes;
  Eigen::VectorXd stiffness = Eigen::VectorXd::Zero(basis.cols());
  stiffness.tail(num_elastic) = (two_pi * in_vacuo.frequencies_hz).cwiseAbs2();
  const Eigen::MatrixXd mass =
      basis.transpose() * symmetric_product(system.M, basis) +
      air_mass(model.mesh, normal_displacements(model.mesh, system.dofs, basis), model.air_density);
  const Eigen::GeneralizedSelfAdjointEigenSolver<Eigen::MatrixXd> eigen(stiffness.asDiagonal().toDenseMatrix(), mass);
  Eigen::MatrixXd shares = eigen.eigenvectors().middleCols(num_rigid, num_modes);

  const Eigen::MatrixXd likeness = shares.bottomRows(num_elastic).cwiseAbs2().transpose();
  const std::vector<int> counterpart = best_assignment(likeness);
  ModalResult result = in_vacuo;
  result.frequencies_hz = eigen.eigenvalues().segment(num_rigid, num_modes).cwiseMax(0.0).cwiseSqrt() / two_pi;
  result.vacuum_frequencies_hz = in_vacuo.frequencies_hz(counterpart);
  result.residuals = in_vacuo.residuals(counterpart);
  for (Eigen::Index k = 0; k < num_modes; ++k) // the sign of the mode in vacuo
    if (shares(num_rigid + counterpart[static_cast<std::size_t>(k)], k) < 0.0)
      shares.col(k) *= -1.0;
  result.shapes = basis * shares;
  return result;
}

ModalResult solve_modes(ModalSolver& solver, const Model& model, const System& system, const ModalOptions& options)
{
  if (model.air_density == 0.0)
    return solver.solve(system, options);
  ModalOptions further = options;
  const auto available = static_cast<int>(system.K.rows() - system.rigid_motions.cols());
  further.num_modes = std::max(options.num_modes, std::min(options.num_modes + num_further_modes, available - 1));
  return modes_in_air(model, system, solver.solve(system, further), options.num_modes);
}

ModalResult solve_modes(const Model& model, const System& system, const ModalOptions& options)
{
  ModalSolver solver;
  return solve_modes(solver, model, system, options);
}

} // namespace plate
