// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/materials/material.h>

namespace plate
{

/// Air that wood has come to rest in.
struct Climate
{
  double temperature = 20.0; ///< [deg C]
  double humidity = 0.5;     ///< relative, as a fraction [-]
};

/// Moisture content of wood at rest in that air, mass of water over dry wood [-].
///
/// @throws InvalidInput outside 0...100 deg C or for a humidity outside 0...0.99
/// @source [WoodHandbook2021] eq. 4-5; pinned by tests/unit/materials/moisture_test.cpp
[[nodiscard]] double equilibrium_moisture(const Climate& climate);

/// A property at another moisture content than 12 %, from its values there and in green wood.
///
/// @param at_12,green     the property in any unit
/// @param content         moisture content wanted, as a fraction; above the intersection the green value holds
/// @param intersection    moisture content M_p, as a fraction; 0.25 for most species
/// @source [WoodHandbook2021] eq. 5-3; pinned by tests/unit/materials/moisture_test.cpp
[[nodiscard]] double at_moisture(double at_12, double green, double content, double intersection);

/// Density of wood whose moisture content changes: water comes or goes, and the volume follows up to 30 % [kg/m3].
///
/// @param density  at moisture content `from` [kg/m3]
/// @source [WoodHandbook2021] eq. 4-13, 4-14
[[nodiscard]] double density_at_moisture(double density, double from, double to);

/// The material as it is in that air, if it has moisture data; else itself.
///
/// All moduli change by the factor of the modulus along the grain, for which the handbook has data; those across change
/// more, by how much is not tabulated. Dimensions stay as they are.
[[nodiscard]] Material in_climate(const Material& material, const Climate& climate);

} // namespace plate
