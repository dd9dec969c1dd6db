// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/modal.h>

#include "lanczos_modes.h"
#include "sparse_combination.h"

#include <plate/core/error.h>

#include <algorithm>
#include <span>

namespace plate
{

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
  check_modal_options(system, options);
  // The sum is gone when the Lanczos process takes its memory.
  const SparseCholesky& factor = factorise(combination(system.K, -modal_shift(system), system.M), system.dofs);
  return lanczos_modes(system, factor, options);
}

const SparseCholesky& ModalSolver::factor(const System& system) const
{
  if (outer_.size() != static_cast<std::size_t>(system.K.rows()) + 1)
    throw InvalidInput(message("ModalSolver: there is no factor of a system of ", system.K.rows(),
                               " unknowns; solve for its modes first"));
  return *factor_;
}

ModalResult solve_modes(const System& system, const ModalOptions& options)
{
  return ModalSolver().solve(system, options);
}

} // namespace plate
