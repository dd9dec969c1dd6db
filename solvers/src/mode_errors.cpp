// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/mode_errors.h>

#include <plate/assembly/enriched_residual.h>
#include <plate/core/error.h>
#include <plate/solvers/sparse_cholesky.h>

#include <cmath>
#include <numbers>

namespace plate
{

namespace
{

constexpr double two_pi = 2.0 * std::numbers::pi;

/// r^T A^-1 r for each mode: what its eigenvalue drops by when the enriched space is allowed [1/s2].
Eigen::VectorXd eigenvalue_drops(const EnrichedResidual& enriched)
{
  const SparseCholesky factor(enriched.A, enriched.groups);
  Eigen::MatrixXd corrections(enriched.residuals.rows(), enriched.residuals.cols());
  factor.solve(enriched.residuals, corrections);
  return enriched.inner + corrections.cwiseProduct(enriched.residuals).colwise().sum().transpose();
}

} // namespace

Eigen::VectorXd mode_errors(const Model& model, const System& system, const ModalResult& modes)
{
  if (modes.shapes.rows() != system.K.rows() || modes.shapes.cols() != modes.frequencies_hz.size())
    throw InvalidInput(message("mode_errors: shapes must be ", system.K.rows(), " x ", modes.frequencies_hz.size(),
                               "; got ", modes.shapes.rows(), " x ", modes.shapes.cols(),
                               ": modes of another system?"));
  const Eigen::VectorXd eigenvalues = (two_pi * modes.frequencies_hz).cwiseAbs2();
  const double shift = -std::pow(two_pi * system.typical_frequency_hz, 2);
  const EnrichedResidual enriched =
      enriched_residual(model, system.dofs, {.shapes = modes.shapes, .eigenvalues = eigenvalues}, shift);
  const Eigen::VectorXd drops = eigenvalue_drops(enriched) + (enriched.rayleigh - eigenvalues).cwiseAbs();
  // Half the relative error of the eigenvalue is that of the frequency.
  return error_bar_factor * drops.cwiseQuotient(2.0 * eigenvalues).cwiseProduct(modes.frequencies_hz);
}

} // namespace plate
