// SPDX-License-Identifier: MPL-2.0
#include <plate/materials/air.h>

#include <plate/core/error.h>

#include <cmath>

namespace plate
{
namespace
{

constexpr double pressure = 101325.0;      // [Pa]
constexpr double gas_constant = 287.05287; // of dry air [J/(kg K)]
constexpr double freezing = 273.15;        // [K]
constexpr double steam_over_air = 0.62198; // molar masses, 18.01528 over 28.9644 g/mol

void check_temperature(double temperature)
{
  if (!(temperature >= -50.0 && temperature <= 100.0))
    throw InvalidInput(message("air: the temperature must be from -50 to 100 deg C; got ", temperature));
}

} // namespace

double air_density(double temperature)
{
  check_temperature(temperature);
  return pressure / (gas_constant * (temperature + freezing));
}

double saturation_pressure(double temperature)
{
  check_temperature(temperature);
  const double T = temperature + freezing;
  return std::exp(1.2378847e-5 * T * T - 1.9121316e-2 * T + 33.93711047 - 6.3431645e3 / T);
}

Air air_in(const Climate& climate)
{
  if (!(climate.humidity >= 0.0 && climate.humidity <= 1.0))
    throw InvalidInput(
        message("air: the relative humidity must be from 0 to 1; got ", climate.humidity, "; is it in percent?"));
  const double steam = climate.humidity * saturation_pressure(climate.temperature) / pressure; // mole fraction
  const double density = air_density(climate.temperature) * (1.0 - steam * (1.0 - steam_over_air));
  // Heat capacities of rigid molecules: two atoms have 7/2 R, three of water 4 R.
  const double ratio_of_heats = (3.5 + 0.5 * steam) / (2.5 + 0.5 * steam);
  return {.density = density, .sound_speed = std::sqrt(ratio_of_heats * pressure / density)};
}

} // namespace plate
