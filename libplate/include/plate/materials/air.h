// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/materials/moisture.h>

namespace plate
{

/// What sound needs to know of the air.
struct Air
{
  double density;     ///< [kg/m3]
  double sound_speed; ///< [m/s]
};

/// Density of dry air as an ideal gas at 101325 Pa [kg/m3].
///
/// Damp air is lighter by less than 1 % up to 20 deg C and by 1.5 % at 30 deg C.
/// @param temperature  [deg C]
/// @throws InvalidInput outside -50...100 deg C
/// @source gas constant and pressure of the standard atmosphere, [ISO2533]; pinned by tests/unit/materials/air_test.cpp
[[nodiscard]] double air_density(double temperature);

/// Air of a climate at 101325 Pa, an ideal mixture of dry air and steam.
///
/// Real gases differ by 0.05 % in both numbers. Humidity 0 is dry air: 1.204 kg/m3 and 343.2 m/s at 20 deg C.
/// @throws InvalidInput if the temperature is outside -50...100 deg C or the humidity outside 0...1
/// @source pressure of saturated steam and molar masses [Picard2008]; pinned by tests/unit/materials/air_test.cpp
[[nodiscard]] Air air_in(const Climate& climate);

/// Pressure of saturated steam over water [Pa].
///
/// @param temperature  [deg C]
/// @source [Picard2008] eq. A1.1; pinned by tests/unit/materials/air_test.cpp
[[nodiscard]] double saturation_pressure(double temperature);

} // namespace plate
