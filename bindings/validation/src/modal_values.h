// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "case_models.h"

#include <plate/assembly/assemble.h>
#include <plate/solvers/modal.h>

namespace plate::validation
{

/// Modes whose residuals and rigid motions are what they must be.
///
/// @throws NumericalFailure otherwise
[[nodiscard]] ModalResult checked_modes(const System& system, int num_modes);

/// The quantities of a case: mass_g is the mass, all others are modes with their number in the name, times `scale`.
///
/// @throws InvalidInput if a name has no number
[[nodiscard]] Values modal_values(const System& system, const ReferenceCase& reference, double scale = 1.0);

/// The quantities of a case, all of them frequencies of a list, with their number from 1 in the name.
///
/// @throws InvalidInput if a name has no number or one beyond the list
[[nodiscard]] Values numbered_values(const Eigen::VectorXd& frequencies_hz, const ReferenceCase& reference);

/// A case of modes of a model, frequencies times `scale`.
[[nodiscard]] CaseModel modes_of(std::string name, std::function<Model()> model, double scale = 1.0);

} // namespace plate::validation
