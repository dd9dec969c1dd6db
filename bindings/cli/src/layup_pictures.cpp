// SPDX-License-Identifier: MPL-2.0
#include "layup_pictures.h"

#include <plate/core/units.h>

namespace plate
{

PolarPicture polar_picture(const std::string& title, const std::vector<LayupCurve>& layups)
{
  PolarPanel stretching = {.heading = "stretching, E", .unit = "GPa", .curves = {}};
  PolarPanel bending = {.heading = "bending, D", .unit = "N m", .curves = {}};
  for (const LayupCurve& layup : layups)
  {
    PolarCurve modulus = {.label = layup.label, .values = {}};
    PolarCurve stiffness = modulus;
    for (const StripStiffness& strip : layup.strips)
    {
      modulus.values.push_back(strip.modulus * gigapascals);
      stiffness.values.push_back(strip.bending);
    }
    stretching.curves.push_back(modulus);
    bending.curves.push_back(stiffness);
  }
  return {.title = title, .panels = {stretching, bending}};
}

} // namespace plate
