// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "element_forms.h"

#include <plate/assembly/assemble.h>

namespace plate::reduced
{

/// The inner product in which the basis is orthonormal: K + shift M in the middle of the box, whole, not a triangle.
using EnergyMatrix = Eigen::SparseMatrix<double, Eigen::RowMajor>;
[[nodiscard]] EnergyMatrix energy_matrix(const System& system, double shift);

/// Vectors that snapshots add to a basis, orthonormal among themselves and to the basis.
///
/// @param basis   orthonormal, (num_equations, n)
/// @param shapes  snapshots, (num_equations, m)
/// @param drop    parts of a snapshot of less than this share of its energy norm are left out; 0: all are kept [-]
[[nodiscard]] Vectors new_vectors(const Vectors& basis, const EnergyMatrix& energy, const Eigen::MatrixXd& shapes,
                                  double drop);

/// Completes the projection of a form on a basis that has grown.
///
/// @param product    the form times the last vectors of the basis, (num_equations, vectors added)
/// @param projected  lower triangle on the vectors before them, (n, n); becomes that on all
void extend_projection(const Vectors& basis, const Vectors& product, Eigen::MatrixXd& projected);

} // namespace plate::reduced
