// SPDX-License-Identifier: MPL-2.0
#include "modal_values.h"

#include <plate/core/error.h>

#include <utility>

namespace plate::validation
{
namespace
{

constexpr double most_residual = 1e-4; // rounding leaves up to 2e-5 in the thinnest plates, 1e-7 in others
constexpr double most_rigid = 1e-2;    // rigid over lowest elastic frequency: rounding again
constexpr double grams = 1e3;          // per kg

} // namespace

ModalResult checked_modes(const System& system, int num_modes)
{
  ModalResult modes = solve_modes(system, {.num_modes = num_modes});
  if (modes.status != Status::converged || modes.residuals.maxCoeff() > most_residual)
    throw NumericalFailure(message("modes not found: ", modes.summary()));
  const auto num_rigid = modes.rigid_frequencies_hz.size();
  if (num_rigid > 0 && modes.rigid_frequencies_hz(num_rigid - 1) > most_rigid * modes.frequencies_hz(0))
    throw NumericalFailure(message("a rigid motion carries energy: ", modes.rigid_frequencies_hz(num_rigid - 1),
                                   " Hz beside a first mode of ", modes.frequencies_hz(0), " Hz"));
  return modes;
}

Values modal_values(const System& system, const ReferenceCase& reference, double scale)
{
  Values values;
  std::vector<std::string> names;
  for (const ReferenceValue& value : reference.values)
    if (value.quantity == "mass_g")
      values["mass_g"] = grams * system.mass;
    else
      names.push_back(value.quantity);
  const ModalResult modes = checked_modes(system, static_cast<int>(names.size()));
  for (std::size_t i = 0; i < names.size(); ++i)
    values[names[i]] = scale * modes.frequencies_hz(static_cast<Eigen::Index>(i));
  return values;
}

CaseModel modes_of(std::string name, std::function<Model()> model, double scale)
{
  return {.name = std::move(name), .compute = [model = std::move(model), scale](const ReferenceCase& reference) {
            return modal_values(assemble(model()), reference, scale);
          }};
}

} // namespace plate::validation
