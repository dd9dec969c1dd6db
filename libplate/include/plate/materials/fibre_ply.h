// SPDX-License-Identifier: MPL-2.0
#pragma once

namespace plate
{

/// A ply as the supplier and the workshop describe it: how much fibre, and how much of the ply it is.
struct FibrePly
{
  double fibre_weight;  ///< mass of fibre per area [kg/m2]
  double fibre_volume;  ///< share of the volume, 0...1 [-]
  double fibre_density; ///< [kg/m3]
  double resin_density; ///< [kg/m3]
};

/// Thickness of the cured ply without voids, W / (rho_f V_f) [m].
[[nodiscard]] double ply_thickness(const FibrePly& ply);

/// Density of the cured ply without voids, rho_f V_f + rho_m (1 - V_f) [kg/m3].
[[nodiscard]] double ply_density(const FibrePly& ply);

} // namespace plate
