// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/laminates/section.h>

#include <Eigen/Core>

#include <array>
#include <span>
#include <vector>

/// What sections and ply stresses share: plies in the frame of a point and how they carry shear.
namespace plate::section_plies
{

using Matrix5d = Eigen::Matrix<double, 5, 5>;
using Matrix6d = Eigen::Matrix<double, 6, 6>;
using Matrix23d = Eigen::Matrix<double, 2, 3>;

/// Stresses (11, 22, 33, 23, 13, 12) in axes m (columns, seen from the frame) from stresses in the frame.
[[nodiscard]] Matrix6d stress_rotation(const Eigen::Matrix3d& m);

/// Axes of a ply as columns, components in the frame of the shell point.
[[nodiscard]] Eigen::Matrix3d ply_axes_in_frame(Angle angle, Grain grain, const Eigen::Matrix3d& frame,
                                                const MaterialAxes& axes);

/// What one ply brings to the section, in the frame of the point.
struct PlyStiffness
{
  double bottom;                    ///< [m]
  double top;                       ///< [m]
  Eigen::Matrix3d P;                ///< in-plane stiffness at zero transverse shear stress [Pa]
  Matrix23d shear_from_strain;      ///< shear strain per in-plane strain at zero transverse shear stress [-]
  Eigen::Matrix2d shear_compliance; ///< at held in-plane strain [1/Pa]
};

[[nodiscard]] std::vector<PlyStiffness> ply_stiffnesses(std::span<const PlacedPly> plies, const Eigen::Matrix3d& frame,
                                                        const MaterialAxes& axes);

/// Transverse shear stress (13, 23) per shear force in one ply, from equilibrium: quadratic in z.
struct ShearDistribution
{
  double bottom;             ///< of the ply [m]
  Eigen::Matrix2d at_bottom; ///< [1/m]
  Eigen::Matrix2d constant;  ///< minus its slope at z = 0 [1/m2]
  Eigen::Matrix2d linear;    ///< minus its second derivative [1/m3]

  [[nodiscard]] Eigen::Matrix2d at(double z) const ///< [1/m]
  {
    return at_bottom - constant * (z - bottom) - linear * (0.5 * (z * z - bottom * bottom));
  }
};

/// Of all plies of a section: zero on both faces, its integral is one.
///
/// @param P  in-plane moments of the section, see SectionStiffness
[[nodiscard]] std::vector<ShearDistribution> shear_distributions(std::span<const PlyStiffness> plies,
                                                                 const std::array<Eigen::Matrix3d, 5>& P);

} // namespace plate::section_plies
