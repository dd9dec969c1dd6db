// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/assemble.h>
#include <plate/assembly/model.h>
#include <plate/solvers/modal.h>

#include <Eigen/Core>

namespace plate
{

/// Factor on the computed correction of a frequency that makes it an error bar.
///
/// The correction alone is 0.9 to 1.1 times the true error on smooth plates, but does not see what cubic surfaces and
/// thicknesses are off, nor all of the error at sharp corners: on violin-like plates at one to 2.2 times the default
/// size the true error was up to 3.9 times the correction, above 3 times in under one mode of twenty (measured by
/// tests/accuracy).
inline constexpr double error_bar_factor = 3.0;

/// Estimated discretisation error of each frequency, against the converged solution of the same theory.
///
/// The residual of each mode is tested with quartic displacements (EnrichedTriangle) and one correction is solved for,
/// in the whole plate at once, so that thin plates are judged as well as thick ones; the drop of the eigenvalue is the
/// energy of the correction. Cubic modes that a finer mesh would only move by its better surface or thickness, e.g.
/// across a channel narrower than a triangle, get a bar that is right in size only.
/// @param modes  of this model and system, eigenvectors included
/// @return error bars, (n), positive [Hz]
/// @throws NumericalFailure  if there is not enough memory for the enriched matrix
/// Cost: about two thirds of solve_modes() for twelve modes, most of it one factorisation.
/// @source hierarchical estimate: [Bank1993] for boundary value problems, [Neymeyr2002] for eigenvalues; pinned by
///   tests/unit/solvers/mode_errors_test.cpp and tests/accuracy
[[nodiscard]] Eigen::VectorXd mode_errors(const Model& model, const System& system, const ModalResult& modes);

} // namespace plate
