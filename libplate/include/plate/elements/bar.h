// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/laminates/section.h>
#include <plate/materials/material.h>

#include <vector>

namespace plate
{

/// Height of a bar along its length, straight between points.
struct BarProfile
{
  std::vector<double> station; ///< distance from the middle of the bar, ascending [m]
  std::vector<double> height;  ///< along the plate's normal, positive [m]

  /// Height at a station, constant beyond the ends [m].
  [[nodiscard]] double at(double s) const;
};

/// A bar glued under the inner face of a plate: an eccentric orthotropic beam that follows the arch.
///
/// Its cross-section moves with the plate above it (no slip, director shared), so its offset stiffens the plate. It
/// carries stress along itself, transverse shear, and torsion about its own axis; across itself it is free.
/// It keeps the axes of its board: 1 along `axis`, 3 along the z of the plate's axes.
struct Bar
{
  Material material;
  double width;       ///< across, in the tangent plane [m]
  BarProfile profile; ///< height over the station
  Eigen::Vector3d axis = Eigen::Vector3d::UnitX(); ///< unit, along the bar in the plane of the rim [-]
};

/// What a bar adds to the plate's section per area of its footprint; direction s along the bar, t across.
struct BarSection
{
  std::array<double, 5> P;    ///< integral of z^k times the modulus along s at zero shear stress [N m^(k-1)]
  double shear;               ///< transverse shear stiffness [N/m]
  double shear_from_strain;   ///< shear strain per strain along s at zero shear stress [-]
  double torsion;             ///< torsional stiffness over width [N m]
  SectionMass mass;           ///< [kg m^(k-2)]
};

/// The plate above a bar.
struct BarSeat
{
  double face;            ///< z of the inner face to which the bar is glued, from the reference surface [m]
  double plate_thickness; ///< patches included [m]
};

/// Section of a bar glued under a plate.
///
/// The shear correction 5/6 holds for a parabola of shear stress with its maximum at the glue line as well as for one
/// with its maximum at half height: (2/3)^2 / (8/15) either way.
/// @param height  along the normal [m]
/// @param frame   columns: along the bar in the tangent plane, across, normal
[[nodiscard]] BarSection bar_section(const Bar& bar, const BarSeat& seat, double height, const Eigen::Matrix3d& frame,
                                     const MaterialAxes& axes);

/// Torsional stiffness of a rectangular orthotropic bar [N m2].
///
/// @param width,height  sides of the cross-section [m]
/// @param G_width       shear modulus between the length and the width direction [Pa]
/// @param G_height      shear modulus between the length and the height direction [Pa]
/// @source [Lekhnitskii1968] sec. 41, series solution; pinned by tests/unit/elements/bar_test.cpp
[[nodiscard]] double torsional_stiffness(double width, double height, double G_width, double G_height);

/// What a bar glued to a plate adds to the plate's torsional stiffness [N m2].
///
/// The stem of a T-section with square corners: a rectangle with one free end plus the share of the junction, which
/// grows with the largest circle inscribed there.
/// @source [Young2002] table 10.1, case 26 (from memory), limits of the circle: geometry; reference: bar cases of
///   tests/reference
[[nodiscard]] double glued_torsional_stiffness(double width, double height, double plate_thickness, double G_width,
                                               double G_height);

} // namespace plate
