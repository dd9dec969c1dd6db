// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/assemble.h>

#include <Eigen/Core>

#include <vector>

namespace plate
{

/// Approximate eigenvectors of an assembled model.
struct ApproximateModes
{
  const Eigen::MatrixXd& shapes;      ///< vectors of unknowns, (num_equations, n); outlive this
  const Eigen::VectorXd& eigenvalues; ///< squares of the angular frequencies, (n) [1/s2]
};

/// What modes leave over when they are tested with quartic displacements (EnrichedTriangle) instead of cubic ones:
/// r = lambda M u - K u in the enriched space, and the matrix A = K - shift M to weigh it with. The unknowns inside the
/// triangles are eliminated from both.
struct EnrichedResidual
{
  SparseMatrix A;                       ///< lower triangle
  std::vector<std::vector<int>> groups; ///< unknowns of each corner and each edge of the mesh, ascending
  Eigen::MatrixXd residuals;            ///< of what is not eliminated, (num_unknowns, n)
  Eigen::VectorXd inner;                ///< share of the eliminated unknowns in r^T A^-1 r, (n)
  /// Rayleigh quotients of the modes in the enriched space: they differ from the eigenvalues by what the integration of
  /// curved or cut triangles is off, (n) [1/s2].
  Eigen::VectorXd rayleigh;
};

/// @param shift  negative, so that A is positive definite also for a free plate [1/s2]
/// Cost: about that of assembly times three.
[[nodiscard]] EnrichedResidual enriched_residual(const Model& model, const DofMap& dofs, const ApproximateModes& modes,
                                                 double shift);

} // namespace plate
