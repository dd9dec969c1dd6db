// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/mode_errors.h>

#include <plate/assembly/eigenvalue_drops.h>
#include <plate/core/error.h>

#include <numbers>

namespace plate
{

Eigen::VectorXd mode_errors(const Model& model, const System& system, const ModalResult& modes)
{
  if (modes.shapes.rows() != system.K.rows() || modes.shapes.cols() != modes.frequencies_hz.size())
    throw InvalidInput(message("mode_errors: shapes must be ", system.K.rows(), " x ", modes.frequencies_hz.size(),
                               "; got ", modes.shapes.rows(), " x ", modes.shapes.cols(),
                               ": modes of another system?"));
  const Eigen::VectorXd eigenvalues = (2.0 * std::numbers::pi * modes.frequencies_hz).cwiseAbs2();
  const EigenvalueDrops drops =
      eigenvalue_drops(model, system.dofs, {.shapes = modes.shapes, .eigenvalues = eigenvalues});
  const Eigen::VectorXd off = error_over_drop * drops.enrichment - drops.data;
  // Half the relative error of the eigenvalue is that of the frequency.
  return error_reserve *
         (drops.enrichment + off.cwiseAbs()).cwiseQuotient(2.0 * eigenvalues).cwiseProduct(modes.frequencies_hz);
}

} // namespace plate
