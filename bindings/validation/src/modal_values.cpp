// SPDX-License-Identifier: MPL-2.0
#include "modal_values.h"

#include <plate/core/error.h>
#include <plate/core/units.h>

#include <algorithm>
#include <charconv>
#include <map>
#include <utility>

namespace plate::validation
{
namespace
{

constexpr double most_residual = 1e-4; // rounding leaves up to 2e-5 in the thinnest plates, 1e-7 in others
constexpr double most_rigid = 1e-2;    // rigid over lowest elastic frequency: rounding again
constexpr const char* mass_quantity = "mass_g";

/// 11 of "f11_hz".
int mode_number(const std::string& quantity)
{
  const char* const end = quantity.data() + quantity.size();
  int number = 0;
  const std::size_t digit = std::min(quantity.find_first_of("0123456789"), quantity.size());
  if (std::from_chars(quantity.data() + digit, end, number).ec != std::errc() || number < 1)
    throw InvalidInput(message("validation data: ", quantity, " names no mode; write e.g. f1_hz"));
  return number;
}

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
  std::map<std::string, int> numbers;
  int num_modes = 0;
  for (const ReferenceValue& value : reference.values)
    if (value.quantity != mass_quantity)
      num_modes = std::max(num_modes, numbers[value.quantity] = mode_number(value.quantity));
  const ModalResult modes = checked_modes(system, num_modes);
  Values values = {{mass_quantity, grams * system.mass}};
  for (const auto& [quantity, number] : numbers)
    values[quantity] = scale * modes.frequencies_hz(number - 1);
  return values;
}

Values numbered_values(const Eigen::VectorXd& frequencies_hz, const ReferenceCase& reference)
{
  Values values;
  for (const ReferenceValue& value : reference.values)
  {
    const Eigen::Index number = mode_number(value.quantity);
    if (number > frequencies_hz.size())
      throw InvalidInput(message("validation data: ", value.quantity, " of '", reference.name, "', but only ",
                                 frequencies_hz.size(), " are computed; leave it out or compute more"));
    values[value.quantity] = frequencies_hz(number - 1);
  }
  return values;
}

CaseModel modes_of(std::string name, std::function<Model()> model, double scale)
{
  return {.name = std::move(name), .compute = [model = std::move(model), scale](const ReferenceCase& reference) {
            return modal_values(assemble(model()), reference, scale);
          }};
}

} // namespace plate::validation
