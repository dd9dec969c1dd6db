// SPDX-License-Identifier: MPL-2.0
#include <plate/materials/air.h>

#include <plate/core/error.h>

namespace plate
{

double air_density(double temperature)
{
  if (!(temperature >= -50.0 && temperature <= 100.0))
    throw InvalidInput(message("air_density: the temperature must be from -50 to 100 deg C; got ", temperature));
  constexpr double pressure = 101325.0;      // [Pa]
  constexpr double gas_constant = 287.05287; // of dry air [J/(kg K)]
  constexpr double freezing = 273.15;        // [K]
  return pressure / (gas_constant * (temperature + freezing));
}

} // namespace plate
