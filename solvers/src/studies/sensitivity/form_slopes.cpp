// SPDX-License-Identifier: MPL-2.0
#include "form_slopes.h"

#include <cmath>

namespace plate::sensitivity
{

FormSlopes combined(double a, const FormSlopes& first, double b, const FormSlopes& second)
{
  return {.stiffness = a * first.stiffness + b * second.stiffness,
          .mass = a * first.mass + b * second.mass,
          .total_mass = a * first.total_mass + b * second.total_mass,
          .any = first.any || second.any};
}

std::vector<double> point_beside(std::span<const SensitivityParameter> parameters, std::size_t parameter, double value)
{
  std::vector<double> point;
  for (const SensitivityParameter& p : parameters)
    point.push_back(p.value);
  point[parameter] = value;
  return point;
}

void check_parameters(std::span<const SensitivityParameter> parameters)
{
  for (std::size_t k = 0; k < parameters.size(); ++k)
    if (!(parameters[k].scale > 0.0 && std::isfinite(parameters[k].scale) && std::isfinite(parameters[k].value)))
      throw InvalidInput(message("sensitivities: parameter ", k + 1, " has the value ", parameters[k].value,
                                 " and the scale ", parameters[k].scale, "; the scale must be positive"));
}

} // namespace plate::sensitivity
