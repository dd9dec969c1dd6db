// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/studies/sensitivity.h>

#include "eigenvalue_slopes.h"
#include "form_slopes.h"
#include "model_steps.h"

#include <plate/core/error.h>
#include <plate/post/mode_names.h>
#include <plate/post/surface_integral.h>
#include <plate/solvers/air_modes.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace plate
{

namespace
{

/// Modes beyond those asked for: repeated ones at the end of the list must be whole.
constexpr int num_spare = 2;

ModalResult solved(const Model& model, const System& system, const SensitivityOptions& options)
{
  const auto available = static_cast<int>(system.K.rows() - system.rigid_motions.cols()) - 1;
  const int num_modes = std::max(options.num_modes, std::min(options.num_modes + num_spare, available));
  ModalResult modes = solve_modes(model, system, {.num_modes = num_modes, .tolerance = options.tolerance});
  if (modes.status != Status::converged)
    throw NumericalFailure(message("sensitivities: the modes did not converge; ", modes.summary()));
  return modes;
}

/// The first modes of a list.
ModalResult first_of(ModalResult modes, Eigen::Index count)
{
  modes.frequencies_hz.conservativeResize(count);
  modes.residuals.conservativeResize(count);
  modes.shapes.conservativeResize(Eigen::NoChange, count);
  if (modes.vacuum_frequencies_hz.size() > 0)
    modes.vacuum_frequencies_hz.conservativeResize(count);
  return modes;
}

} // namespace

SensitivityResult sensitivities(ParametricModel& design, std::span<const SensitivityParameter> parameters,
                                const SensitivityOptions& options)
{
  sensitivity::check_parameters(parameters);
  std::vector<double> values;
  for (const SensitivityParameter& parameter : parameters)
    values.push_back(parameter.value);
  SensitivityResult result;
  result.model = design.build(values);
  result.system = assemble(result.model);
  const ModalResult modes = solved(result.model, result.system, options);
  const sensitivity::EigenvalueSlopes eigenvalues(modes.frequencies_hz);
  result.modes = first_of(modes, options.num_modes);
  result.names =
      name_modes(result.model.mesh, normal_displacements(result.model.mesh, result.system.dofs, result.modes.shapes));
  result.close = eigenvalues.close_modes(options.num_modes);

  const sensitivity::ModelSteps steps(design, parameters, result.model);
  for (std::size_t k = 0; k < parameters.size(); ++k)
  {
    if (options.progress && !options.progress(k, parameters.size()))
      return result;
    const sensitivity::FormSlopes slopes = steps.slopes(k, result.system.dofs, modes.shapes, eigenvalues.pairs());
    result.parameters.push_back(
        {.slopes_hz = eigenvalues.branches(slopes.stiffness, slopes.mass).head(options.num_modes),
         .mass_slope = slopes.total_mass,
         .acts = slopes.any});
  }
  result.complete = true;
  return result;
}

} // namespace plate
