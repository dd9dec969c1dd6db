// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/solvers/modal.h>

#include <Eigen/Core>

namespace plate
{

/// Adds to modes what they lack of the answer to loads: further shapes of unit modal mass, orthogonal to all others.
///
/// With the pressure in a body and the force at its bridge among the loads, a hundred modes give both what all would:
/// the motion of the modes left out is in phase with the load. Frequencies of the further shapes are Rayleigh
/// quotients far above the modes; no residuals belong to them.
/// @param solver  that solved the system last, for these modes: its factor serves again
/// @param modes   of the system
/// @param loads   (num_equations, m), columns that the modes answer in full add nothing [N]
/// @return frequencies and shapes with up to m more, ascending within these; the rest as in `modes`
/// @throws InvalidInput if the sizes differ, or the solver has not solved the system
/// @source residual vectors, common practice, no source; pinned by tests/unit/air/static_shapes_test.cpp
[[nodiscard]] ModalResult with_static_shapes(const ModalSolver& solver, const System& system, const ModalResult& modes,
                                             const Eigen::MatrixXd& loads);

/// Rigid motions as modes of 0 Hz: of unit modal mass and orthogonal, (num_equations, 0...6).
///
/// A response needs them beside the elastic modes: the mass of a free body.
[[nodiscard]] Eigen::MatrixXd unit_rigid_motions(const System& system);

} // namespace plate
