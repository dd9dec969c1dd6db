// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/assemble.h>
#include <plate/assembly/model.h>
#include <plate/solvers/modal.h>

#include <Eigen/Core>

namespace plate
{

/// What the true error is over the drop that quartic displacements bring, on most plates: quartic functions of one edge
/// at a time see that part of it (median of tests/accuracy; 1.0 to 1.4 for nine modes of ten on plates of constant
/// thickness).
inline constexpr double error_over_drop = 1.2;

/// Reserve on what is computed, for what quartic displacements see less of: sharp corners, thickness that changes
/// within a triangle. Calibrated by tests/accuracy: 99 % of all true errors are below the bars, 97 % of the bars below
/// ten times the true error.
inline constexpr double error_reserve = 1.5;

/// Estimated discretisation error of each frequency, against the converged solution of the same theory.
///
/// The bar is 1.5 (d + |1.2 d - q|): d is what the frequency drops by when quartic displacements are allowed, q what
/// the true thickness and exact integration would change (eigenvalue_drops()). Meshes with one triangle per half-wave
/// of a thin plate are not covered. Under a point mass the deflection grows with the logarithm of the size of the
/// triangles and nothing converges: there bars cover meshes of a sixth of the size.
/// @param modes  of this model and system, in vacuo, eigenvectors included
/// @return error bars, (n), positive [Hz]
/// Cost: less than assemble() for twelve modes; a sixth of solve_modes().
/// @source hierarchical estimate: [Bank1993] for boundary value problems, [Neymeyr2002] for eigenvalues; pinned by
///   tests/unit/solvers/mode_errors_test.cpp and tests/accuracy
[[nodiscard]] Eigen::VectorXd mode_errors(const Model& model, const System& system, const ModalResult& modes);

} // namespace plate
