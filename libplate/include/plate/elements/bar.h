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
/// carries stress along itself, transverse shear, and torsion with the plate (BarTorsion); across itself it is free.
/// It keeps the axes of its board: 1 along `axis`, 3 along the z of the plate's axes.
struct Bar
{
  Material material;
  double width;                                    ///< across, in the tangent plane [m]
  BarProfile profile;                              ///< height over the station
  Eigen::Vector3d axis = Eigen::Vector3d::UnitX(); ///< unit, along the bar in the plane of the rim [-]
};

/// What a bar adds to the plate's section per area of its footprint; direction s along the bar, t across.
struct BarSection
{
  std::array<double, 5> P;  ///< integral of z^k times the modulus along s at zero shear stress [N m^(k-1)]
  double shear;             ///< transverse shear stiffness [N/m]
  double shear_from_strain; ///< shear strain per strain along s at zero shear stress [-]
  SectionMass mass;         ///< [kg m^(k-2)]
};

/// Section of a bar glued under a plate.
///
/// The shear correction 5/6 holds for a parabola of shear stress with its maximum at the glue line as well as for one
/// with its maximum at half height: (2/3)^2 / (8/15) either way.
/// @param face    z of the inner face to which the bar is glued, from the reference surface [m]
/// @param height  along the normal [m]
/// @param frame   columns: along the bar in the tangent plane, across, normal
[[nodiscard]] BarSection bar_section(const Bar& bar, double face, double height, const Eigen::Matrix3d& frame,
                                     const MaterialAxes& axes);

/// Compliance of the bar's wood in that frame, as ply_compliance() [1/Pa].
[[nodiscard]] Eigen::Matrix<double, 5, 5> bar_compliance(const Bar& bar, const Eigen::Matrix3d& frame,
                                                         const MaterialAxes& axes);

/// What a bar adds to the torsional stiffness of the plate above it, over its length.
///
/// It depends on the bar's height and on the plies above, and takes a solve of the cross-section: once per station, not
/// per point.
struct BarTorsion
{
  std::vector<double> station;   ///< as BarProfile::station [m]
  std::vector<double> stiffness; ///< glued_torsional_stiffness() there [N m2]

  /// Stiffness at a station, straight between those of the table [N m2].
  [[nodiscard]] double at(double s) const;
};

} // namespace plate
