// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/parametric_body.h>
#include <plate/solvers/body_modes.h>
#include <plate/solvers/studies/sensitivity.h>

#include <span>
#include <vector>

namespace plate
{

/// A body at the values of its parameters, with its modes.
struct SolvedBody
{
  const BodyPoint& point;
  const BodySystem& system;
  const BodyModes& modes; ///< refined (BodyOptions::refined_modes) at least as far as num_refined()
};

/// What derivatives of a number of modes ask for: two more, so that repeated ones at the end of the list are whole.
[[nodiscard]] constexpr int num_refined(int num_modes)
{
  return num_modes + 2;
}

/// Derivatives of the modes of a body with its air.
struct BodySensitivityResult
{
  std::vector<CloseModes> close;       ///< of the modes given
  std::vector<Sensitivity> parameters; ///< in the order asked for; fewer if stopped early
  bool complete = false;               ///< false if stopped early
};

/// Exact derivatives of the frequencies of a body with its air by its parameters.
///
/// d lambda = z^T (dK - lambda dM) z with the matrices of structure, holes and cavity modes together and z of unit
/// modal mass. The structure's are the differences of whole assembled matrices of two neighbouring bodies on one mesh,
/// moved; the air's those of its operators on the motions of the modes, which need no other basis. Cavity modes of both
/// neighbours are turned into those of the body in between, so that they may change places. Nothing is solved again but
/// the cavity. Steps as in sensitivities(), those of the air without the smaller one, since nothing shears
/// there; where outlines of holes change, 2 % of the scale: their flow is known no finer.
/// @param design      is asked for bodies a step of one parameter at a time to either side
/// @param parameters  values at which `solved` was solved
/// @param degree      of the pressure through the height, as BodyOptions::pressure_degree
/// @throws InvalidInput      if sizes do not fit, or there is no such design
/// @throws NumericalFailure  if the modes of a cavity do not converge
/// Cost: for each parameter four meshes moved, two assemblies and, where the air has other walls, two cavities.
/// @source as sensitivities(); pinned by tests/unit/design/body_sensitivity_test.cpp
[[nodiscard]] BodySensitivityResult body_sensitivities(ParametricBody& design,
                                                       std::span<const SensitivityParameter> parameters,
                                                       const SolvedBody& solved, const SensitivityOptions& options,
                                                       int degree = BodyOptions().pressure_degree);

} // namespace plate
