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

/// Abscissae and weights on [-1, 1], exact to degree five: the shear stress of a ply is quadratic, its energy quartic.
inline constexpr std::array<double, 3> gauss_point = {-0.7745966692414834, 0.0, 0.7745966692414834};
inline constexpr std::array<double, 3> gauss_weight = {5.0 / 9.0, 8.0 / 9.0, 5.0 / 9.0};

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

/// Strain (11, 22, 12) of a ply from derivatives of the shear force (of 13 along 1, 23 along 1, 13 along 2, 23 along
/// 2).
using WarpingStrain = Eigen::Matrix<double, 3, 4>;

/// Warping of the cross-section of one ply: how it departs from a straight line, per shear force.
struct Warping
{
  ShearDistribution shear;
  Eigen::Matrix2d compliance; ///< in shear [1/Pa]
  Eigen::Matrix2d mean;       ///< compliance of the whole section, which turns the straight line [m/N]
  Eigen::Matrix2d at_bottom;  ///< displacement of the ply's lower face [m2/N]

  [[nodiscard]] Eigen::Matrix2d at(double z) const;   ///< [m2/N]
  [[nodiscard]] WarpingStrain strain(double z) const; ///< [m2/N]
};

/// Of all plies; a straight line may be added.
[[nodiscard]] std::vector<Warping> warpings(std::span<const PlyStiffness> plies,
                                            std::span<const ShearDistribution> shear,
                                            const Eigen::Matrix2d& section_shear);

/// Of all plies of a section: zero on both faces, its integral is one.
///
/// @param P  in-plane moments of the section, see SectionStiffness
[[nodiscard]] std::vector<ShearDistribution> shear_distributions(std::span<const PlyStiffness> plies,
                                                                 const std::array<Eigen::Matrix3d, 5>& P);

} // namespace plate::section_plies
