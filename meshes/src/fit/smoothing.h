// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>
#include <Eigen/SparseCore>

namespace plate
{

/// Penalised least squares: find c with |B c - values|^2 + w c^T R c least, the weight w to be chosen.
struct SmoothingProblem
{
  Eigen::SparseMatrix<double, Eigen::RowMajor> basis; ///< B, (points, coefficients)
  Eigen::SparseMatrix<double> roughness;              ///< R, symmetric positive semi-definite, both triangles
  int order;                                          ///< of the derivative that R penalises
  Eigen::MatrixXd values;                             ///< (points, 1 or more) [m]
};

/// Coefficients and how good they are.
struct SmoothingResult
{
  Eigen::MatrixXd coefficients; ///< (coefficients, columns of the values) [m]
  double score;                 ///< cross-validation score: mean square by which a point left out would be missed [m^2]
};

/// Coefficients with the weight that generalised cross-validation chooses.
///
/// The score is n |B c - values|^2 / (n - d - 1.4 (tr H - d))^2 with the influence matrix H and d its trace under the
/// heaviest weight; the factor guards against following the noise [KimGu2004]. The trace is exact for small problems,
/// else estimated from fixed pseudo-random signs [Girard1989]: the same input gives the same result.
///
/// @throws NumericalFailure if the equations are singular
[[nodiscard]] SmoothingResult solve_smoothing(const SmoothingProblem& problem);

} // namespace plate
