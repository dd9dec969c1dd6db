// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/elements/shell_triangle.h>

namespace plate
{

/// Geometric stiffness of a ShellTriangle: what forces in the surface add when it moves, symmetric [N/m].
///
/// The membrane forces of a state of small strain, bar included, act on the slopes of all three displacements. Moments
/// and shear forces are left out: beside the forces they count as the thickness to the radius.
/// @param u   unknowns of the nodes in the state that makes the forces
/// @param KG  is overwritten
/// @source [Zienkiewicz2005], initial stress; pinned by tests/unit/solvers/buckling_test.cpp and tests/reference
void geometric_stiffness(const ShellTriangleNodes& nodes, const ShellMaterial& material, const TriangleParts& parts,
                         const Eigen::Matrix<double, ShellTriangle::num_dofs, 1>& u, ShellTriangle::Matrix& KG);

} // namespace plate
