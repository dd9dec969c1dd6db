// SPDX-License-Identifier: MPL-2.0
#include "mode_estimates.h"

#include <algorithm>

namespace plate::reduced
{

namespace
{

constexpr double solver_tolerance = 1e-9; // of the full solves compared with

/// Relative errors of the frequencies from their residuals r = K x - lambda M x.
///
/// The error of an eigenvalue is r . (K - lambda M)^-1 r over what the basis lacks, motions of modes from lambda_next
/// on; r . (K + shift M)^-1 r is less by up to (lambda_next + shift) / (lambda_next - lambda).
Eigen::VectorXd residual_errors(const ReducedPair& pair, const SmallModes& modes, double shift, Eigen::Index num_modes)
{
  constexpr double least_gap = 0.05; // a closer neighbour is no longer told apart
  const double next = modes.eigenvalues.tail<1>()(0);
  Eigen::VectorXd errors(num_modes);
  for (Eigen::Index j = 0; j < num_modes; ++j)
  {
    const double lambda = modes.eigenvalues(j);
    const auto vector = modes.vectors.col(j);
    const Eigen::VectorXd products = pair.stiffness.sketched * vector - lambda * (pair.mass.sketched * vector);
    const double norm2 = products.squaredNorm() / static_cast<double>(products.size());
    const double gap = std::max(next - lambda, least_gap * next);
    errors(j) = 0.5 * norm2 * (next + shift) / gap / lambda;
  }
  return errors;
}

} // namespace

EstimatedModes estimated_modes(const ReducedSystem& system, const Coefficients& coefficients,
                               const ReducedPair& reference, double shift, Eigen::Index num_rigid,
                               Eigen::Index num_modes, Eigen::Index num_spare)
{
  const ReducedPair pair = system.combined(coefficients);
  const Eigen::Index solved = std::min(num_modes + num_spare, pair.mass.projected.rows() - num_rigid);
  EstimatedModes out;
  out.modes = small_modes(pair.stiffness.projected, pair.mass.projected, num_rigid, solved);
  out.residual_errors = residual_errors(pair, out.modes, shift, num_modes);
  out.modes.eigenvalues.conservativeResize(num_modes);
  out.modes.vectors.conservativeResize(Eigen::NoChange, num_modes);
  out.other_errors.resize(num_modes);
  for (Eigen::Index j = 0; j < num_modes; ++j)
  {
    const Eigen::VectorXd vector = out.modes.vectors.col(j);
    const double lambda = out.modes.eigenvalues(j);
    const double stiffness = coefficients.stiffness.misfit * reference.stiffness.form(vector) / lambda;
    const double mass = coefficients.mass.misfit * reference.mass.form(vector);
    const double torsion = system.torsion_error() * 2.0 * system.torsion_energy(coefficients, vector) / lambda;
    out.other_errors(j) = 0.5 * (stiffness + mass + torsion) + solver_tolerance;
  }
  return out;
}

} // namespace plate::reduced
