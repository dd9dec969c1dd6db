// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/core/units.h>
#include <plate/materials/material.h>

#include <vector>

namespace plate
{

/// How the material axes of a ply sit in a curved plate.
enum class Grain
{
  laid,  ///< follow the surface: 1 = reference axis projected on the tangent plane, turned by the ply angle; 3 = normal
  carved ///< keep the axes of the board the plate was cut from: 1 along the reference axis, 3 along z, at any slope
};

/// One layer of a laminate.
struct Ply
{
  Material material;
  double thickness; ///< [m]
  Angle angle = {}; ///< from the reference axis, positive from x to y seen from outside
  Grain grain = Grain::laid;
};

/// Plies from the inside (air side) to the outside (mould side). Solid wood is a laminate of one ply.
struct Laminate
{
  std::vector<Ply> plies;
};

/// Total thickness [m].
[[nodiscard]] double total_thickness(const Laminate& laminate);

/// Mass per area of the flat laminate [kg/m2].
[[nodiscard]] double areal_mass(const Laminate& laminate);

/// Checks that there is at least one ply, every thickness is positive and every material possible.
///
/// @throws InvalidInput naming the ply (counted from 1, inside first)
void check_laminate(const Laminate& laminate);

} // namespace plate
