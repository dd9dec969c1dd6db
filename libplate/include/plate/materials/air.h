// SPDX-License-Identifier: MPL-2.0
#pragma once

namespace plate
{

/// Density of dry air as an ideal gas at 101325 Pa [kg/m3].
///
/// Damp air is lighter by less than 1 % up to 20 deg C and by 1.5 % at 30 deg C.
/// @param temperature  [deg C]
/// @throws InvalidInput outside -50...100 deg C
/// @source gas constant and pressure of the standard atmosphere, [ISO2533]; pinned by tests/unit/materials/air_test.cpp
[[nodiscard]] double air_density(double temperature);

} // namespace plate
