// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/model.h>
#include <plate/solvers/modal.h>

namespace plate
{

/// Modes of a plate with the air of its model around it (Model::air_density), from those in vacuo.
///
/// The mass of the air is taken on the rigid motions and the modes given, so these should be a few more than wanted.
/// An edge that is held counts as one the air flows round. Air does not damp here: no sound is radiated.
/// @param in_vacuo   modes of the same model, at least num_modes
/// @return shapes^T (M + mass of the air) shapes = I; residuals are those of the modes in vacuo they are most alike
/// @throws InvalidInput      if too few modes are given
/// @throws NumericalFailure  as air_mass()
/// @source pinned by tests/unit/solvers/air_modes_test.cpp, tests/reference
[[nodiscard]] ModalResult modes_in_air(const Model& model, const System& system, const ModalResult& in_vacuo,
                                       int num_modes);

/// Lowest elastic modes of a model, in vacuo or in the air it names.
///
/// @param solver  kept for further systems of the same pattern
/// @throws as ModalSolver::solve() and modes_in_air()
[[nodiscard]] ModalResult solve_modes(ModalSolver& solver, const Model& model, const System& system,
                                      const ModalOptions& options = {});
[[nodiscard]] ModalResult solve_modes(const Model& model, const System& system, const ModalOptions& options = {});

} // namespace plate
