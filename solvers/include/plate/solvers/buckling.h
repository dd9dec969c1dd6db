// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/assemble.h>
#include <plate/solvers/modal.h>
#include <plate/solvers/statics.h>

#include <Eigen/Core>

namespace plate
{

/// What to compute.
struct BucklingOptions
{
  int num_modes = 3;       ///< the lowest factor and a few above it, to see whether they lie close
  double tolerance = 1e-6; ///< relative, on the inverse of the factor: far below what the linear theory is worth
  int max_restarts = 200;  ///< of the Lanczos process
};

/// Linear buckling: factors on the load at which a plate has another shape of equilibrium beside the straight one.
struct BucklingResult
{
  Eigen::VectorXd factors;   ///< positive, ascending; fewer than asked for, or none, if the load does not press [-]
  Eigen::MatrixXd shapes;    ///< vectors of unknowns, (num_equations, n), shapes^T K shapes = I
  Eigen::VectorXd residuals; ///< |K x + factor KG x| / |K x|, (n) [-]
  Status status = Status::not_converged;
};

/// Lowest buckling factors from the geometric stiffness of the state under the load.
///
/// Arches and shells buckle below it: imperfect ones at a half to a fifth. It tells a safe design from a doubtful one.
/// Where the supports leave rigid motions the load turns with the plate, as strings do that are fixed to it.
/// @param plate  with its factorised stiffness, as it was used for the state under the load
/// @param KG     see geometric_stiffness()
/// @throws InvalidInput      if KG was made for another model
/// @throws NumericalFailure  if the matrix cannot be factorised
/// @source K x = -factor KG x, [Zienkiewicz2005]; pinned by tests/unit/solvers/buckling_test.cpp and tests/reference
[[nodiscard]] BucklingResult solve_buckling(const StaticSolver& plate, const SparseMatrix& KG,
                                            const BucklingOptions& options = {});
[[nodiscard]] BucklingResult solve_buckling(const System& system, const SparseMatrix& KG,
                                            const BucklingOptions& options = {});

/// The system in a state of stress: its modes are those of the loaded plate. Rigid motions are left out of them as
/// ever, whatever stiffness the load gives those.
///
/// @throws nothing; solve_modes() fails if the state lies beyond the buckling load
[[nodiscard]] System prestressed(const System& system, const SparseMatrix& KG);

} // namespace plate
