// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/mesh/shell_mesh.h>

#include <Eigen/Core>

namespace plate
{

/// Mass of the air that moves with both faces of a plate on which nothing borders, between fields of motion.
///
/// The air is incompressible: its wavelengths at tap tones are several times the plate. It flows round all edges,
/// those of holes too. The plate counts as a surface without thickness; a bar under it moves no further air. Linear
/// panels for the jump of the pressure, about a thousand whatever the mesh, so that the cost does not grow with it.
/// @param w        displacement along the outward normal at the nodes, (num_nodes, n)
/// @param density  of the air [kg/m3]
/// @return symmetric, (n, n): w_i^T M w_j is twice the kinetic energy of the air, [kg] for w without unit
/// @throws InvalidInput      if the surface is closed: there is air it cannot move without compressing it
/// @throws NumericalFailure  if the panels give no positive energy
/// @source potential of a double layer, weak form by Stokes' theorem: [Nedelec1982]; pinned by
///   tests/unit/solvers/air_mass_test.cpp (discs, sphere) and tests/reference (plate)
[[nodiscard]] Eigen::MatrixXd air_mass(const ShellMesh& mesh, const Eigen::MatrixXd& w, double density);

} // namespace plate
