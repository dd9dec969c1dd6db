// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/assemble.h>
#include <plate/solvers/sparse_cholesky.h>

#include <Eigen/Core>

#include <optional>
#include <string>
#include <vector>

namespace plate
{

/// Did a solver reach what was asked.
enum class Status
{
  converged,
  not_converged
};

/// What to compute.
struct ModalOptions
{
  int num_modes = 12;      ///< lowest elastic modes; rigid-body modes are not counted
  double tolerance = 1e-9; ///< relative, on the shifted and inverted eigenvalue: far below the discretisation error
  int max_restarts = 100;  ///< of the Lanczos process; 10 are usual
};

/// Natural modes of a plate.
struct ModalResult
{
  Eigen::VectorXd frequencies_hz;        ///< elastic modes, ascending, (n) [Hz]
  Eigen::MatrixXd shapes;                ///< vectors of unknowns, (num_equations, n), shapes^T M shapes = I
  Eigen::VectorXd residuals;             ///< |K x - w^2 M x| / |w^2 M x|, (n) [-]
  Eigen::VectorXd vacuum_frequencies_hz; ///< in air: of the same modes in vacuo, (n); empty in vacuo [Hz]
  Eigen::VectorXd rigid_frequencies_hz;  ///< what the rigid motions carry by rounding, ascending, (0...6) [Hz]
  int num_solves = 0;                    ///< solves with the factorised matrix
  Status status = Status::not_converged;

  [[nodiscard]] std::string summary() const;
};

/// Lowest elastic modes of assembled plates, one after the other. Systems of the same pattern share the elimination
/// order and its analysis, with the same result bit for bit as without sharing.
class ModalSolver
{
public:
  /// Modes of one plate.
  ///
  /// Shift-invert Lanczos with the rigid motions projected out, so they neither cost iterations nor appear in the list.
  /// The shift is negative: K - shift M is positive definite also for a free plate.
  /// @throws InvalidInput      if more modes are asked for than there are unknowns to carry them
  /// @throws NumericalFailure  if the matrix cannot be factorised
  /// @source [Lehoucq1998] sec. 3.2 and 4.5; pinned by tests/unit/solvers/modal_test.cpp
  [[nodiscard]] ModalResult solve(const System& system, const ModalOptions& options = {});

  /// Of K - shift M of the system solved last: positive definite, close to K for all but rigid motions.
  ///
  /// @param system  the one solved last
  /// @throws InvalidInput if that had another number of unknowns, or none was solved
  [[nodiscard]] const SparseCholesky& factor(const System& system) const;

private:
  const SparseCholesky& factorise(const SparseMatrix& A, const DofMap& dofs);

  std::vector<int> outer_; ///< pattern of the last matrix factorised
  std::vector<int> inner_;
  std::optional<SparseCholesky> factor_;
};

/// Lowest elastic modes of one assembled plate, see ModalSolver::solve().
[[nodiscard]] ModalResult solve_modes(const System& system, const ModalOptions& options = {});

} // namespace plate
