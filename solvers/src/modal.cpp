// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/modal.h>

#include "lanczos_modes.h"

#include <plate/core/error.h>

#include <algorithm>
#include <utility>

namespace plate
{

namespace
{

bool same_pattern(const SparseMatrix& a, const SparseMatrix& b)
{
  return a.rows() == b.rows() && a.nonZeros() == b.nonZeros() &&
         std::equal(a.outerIndexPtr(), a.outerIndexPtr() + a.outerSize() + 1, b.outerIndexPtr()) &&
         std::equal(a.innerIndexPtr(), a.innerIndexPtr() + a.nonZeros(), b.innerIndexPtr());
}

} // namespace

std::string ModalResult::summary() const
{
  return message(frequencies_hz.size(), " modes", status == Status::converged ? "" : " (not converged)", ", ",
                 rigid_frequencies_hz.size(), " rigid, largest residual ",
                 residuals.size() > 0 ? residuals.maxCoeff() : 0.0, ", ", num_solves, " solves");
}

const SparseCholesky& ModalSolver::factorise(SparseMatrix A, const DofMap& dofs)
{
  if (factor_ && same_pattern(A, A_))
    factor_->factorise(A);
  else
    factor_.emplace(A, unknowns_by_node(dofs));
  A_ = std::move(A);
  return *factor_;
}

ModalResult ModalSolver::solve(const System& system, const ModalOptions& options)
{
  check_modal_options(system, options);
  return lanczos_modes(system, factorise(system.K - modal_shift(system) * system.M, system.dofs), options);
}

ModalResult solve_modes(const System& system, const ModalOptions& options)
{
  return ModalSolver().solve(system, options);
}

} // namespace plate
