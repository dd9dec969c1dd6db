// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/core/error.h>
#include <plate/solvers/studies/sensitivity.h>

#include <Eigen/Core>

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace plate::sensitivity
{

/// Step of a difference as part of a parameter's scale, where the mesh stays: truncation and rounding leave less than
/// 1e-6 of the derivative; a third of it makes rounding that large.
inline constexpr double relative_step = 1e-4;

/// The same where nodes move.
///
/// Vectors stay as they are meanwhile, so that shear strains of the size of the distortion appear in the triangles; in
/// a thin plate their energy is large, and leaves an error of its third power. A bridge line moved over 1e-4 of its
/// distance left 3e-4 of the derivative, 1e-5 left 3e-6, 3e-6 3e-7 (of a viola top at 18 mm), and below 1e-6 rounding
/// takes over.
inline constexpr double moving_step = 3e-6;

/// Steps of a difference as parts of a parameter's scale.
struct StepSizes
{
  double usual = relative_step;
  double moved = moving_step; ///< where something moves that asks for another one
};

/// How stiffness and mass, that of the air too, change with a parameter, or between two values of it.
struct FormSlopes
{
  Eigen::VectorXd stiffness; ///< phi_i^T dK phi_j of the pairs, per unit of the parameter
  Eigen::VectorXd mass;      ///< phi_i^T dM phi_j of the pairs, per unit of the parameter
  double total_mass = 0.0;   ///< [kg per unit of the parameter]
  bool any = false;          ///< something changes
};

/// a * first + b * second.
[[nodiscard]] FormSlopes combined(double a, const FormSlopes& first, double b, const FormSlopes& second);

/// @throws InvalidInput if a scale is not positive or a number not finite
void check_parameters(std::span<const SensitivityParameter> parameters);

/// Values of the parameters with another one for one of them.
[[nodiscard]] std::vector<double> point_beside(std::span<const SensitivityParameter> parameters, std::size_t parameter,
                                               double value);

/// Slopes by differences over one step to both sides, or over two to one side where the other has no design.
///
/// @param base    what at() gives at the value of the parameter
/// @param at      (value) -> std::optional<State>; nothing where there is no design
/// @param moves   (state) -> whether its step is that of StepSizes::moved
/// @param change  (from, to) -> FormSlopes, the change from one state to another
/// @throws InvalidInput if there is no design on either side
template <class State, class At, class Moves, class Change>
[[nodiscard]] FormSlopes slopes_by_steps(std::size_t index, const SensitivityParameter& parameter, const State& base,
                                         const At& at, const Moves& moves, const Change& change,
                                         const StepSizes& sizes = {})
{
  const auto& [value, scale] = parameter;
  double step = sizes.usual * scale;
  std::optional<State> up = at(value + step);
  std::optional<State> down = up && moves(*up) ? std::nullopt : at(value - step);
  if ((up && moves(*up)) || (down && moves(*down)))
  {
    step = sizes.moved * scale;
    up = at(value + step);
    down = at(value - step);
  }
  if (up && down)
  {
    const FormSlopes both = change(*down, *up);
    return combined(0.5 / step, both, 0.0, both);
  }
  if (!up && !down)
    throw InvalidInput(message("sensitivities: parameter ", index + 1, " = ", value, ": there is no design a step of ",
                               step, " to either side; leave it out"));
  const double sign = up ? 1.0 : -1.0;
  const std::optional<State> further = at(value + 2.0 * sign * step);
  if (!further)
    throw InvalidInput(message("sensitivities: parameter ", index + 1, " = ", value, ": there is no design ",
                               2.0 * step, " beside it; leave it out"));
  return combined(sign * 2.0 / step, change(base, up ? *up : *down), sign * -0.5 / step, change(base, *further));
}

} // namespace plate::sensitivity
