// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/laminates/laminate.h>

#include <Eigen/Core>

#include <array>
#include <span>
#include <vector>

namespace plate
{

/// Directions that fix the material axes of a plate: reference axis (angle 0) and the board's third axis.
struct MaterialAxes
{
  Eigen::Vector3d axis = Eigen::Vector3d::UnitX(); ///< unit; along the body for a top or back [-]
  Eigen::Vector3d up = Eigen::Vector3d::UnitZ();   ///< unit, perpendicular to axis; outward for a top or back [-]
};

/// Orthonormal frame of a shell point: columns e1 (reference axis projected on the tangent plane), e2, normal.
///
/// @param normal  unit normal
/// @throws nothing; a normal along the axis falls back on the next best direction (up)
[[nodiscard]] Eigen::Matrix3d shell_frame(const Eigen::Vector3d& normal, const MaterialAxes& axes);

/// Stiffness of a shell section about its mid-surface, in the frame of shell_frame().
///
/// Energy per area = 1/2 sum over powers of z of strain products with P, plus
/// 1/2 (gamma - G0 eps - G1 kappa)^T shear (gamma - G0 eps - G1 kappa).
/// Strains (11, 22, 12) with engineering shear; gamma order (13, 23).
///
/// The transverse shear stress follows from equilibrium of the plies; G0 and G1 are non-zero only where material axes
/// are tilted out of the tangent plane (wood carved from a board).
/// @source in-plane: classical lamination theory [Jones1999] ch. 4; shear: [Rohwer1988] (cylindrical-bending
///   equilibrium); tilted axes: derivation in DEVELOPERS.md, "Carved wood"
struct SectionStiffness
{
  std::array<Eigen::Matrix3d, 5> P = {}; ///< integral of z^k times shear-free in-plane stiffness, k = 0..4 [N m^(k-1)]
  Eigen::Matrix2d shear = {};            ///< transverse shear stiffness [N/m]
  Eigen::Matrix<double, 2, 3> G0 = {};   ///< shear strain from membrane strain at zero shear force [-]
  Eigen::Matrix<double, 2, 3> G1 = {};   ///< shear strain from curvature at zero shear force [m]
};

/// A ply in its place in a section; z counts from the reference surface outward.
struct PlacedPly
{
  const Material* material; ///< must outlive the ply
  double bottom;            ///< [m]
  double top;               ///< [m]
  Angle angle = {};
  Grain grain = Grain::laid;
};

/// Puts the plies of a laminate, scaled together to a local thickness [m], symmetrically about the mid-surface.
///
/// @param plies  is overwritten; a buffer of the caller, so that repeated use allocates nothing
void place_plies(const Laminate& laminate, double thickness, std::vector<PlacedPly>& plies);

/// Mass of a shell section: integrals of z^k times density, k = 0..4 [kg m^(k-2)].
using SectionMass = std::array<double, 5>;

/// Stiffness of a laminate whose plies are scaled together to a local thickness.
///
/// @param laminate   plies from inside (z < 0) to outside
/// @param thickness  local total thickness; equal to total_thickness(laminate) for an unscaled stack [m]
/// @param frame      frame of the point, see shell_frame()
/// @param axes       material axes of the plate
/// Cost: about a microsecond per ply.
[[nodiscard]] SectionStiffness section_stiffness(const Laminate& laminate, double thickness,
                                                 const Eigen::Matrix3d& frame, const MaterialAxes& axes);

/// Stiffness of plies that lie on each other without gaps, from inside to outside, about z = 0 wherever that is.
[[nodiscard]] SectionStiffness section_stiffness(std::span<const PlacedPly> plies, const Eigen::Matrix3d& frame,
                                                 const MaterialAxes& axes);

/// Mass of a laminate whose plies are scaled together to a local thickness [m].
[[nodiscard]] SectionMass section_mass(const Laminate& laminate, double thickness);
[[nodiscard]] SectionMass section_mass(std::span<const PlacedPly> plies);

/// The laminate with with_loss_step() applied to every ply.
[[nodiscard]] Laminate with_loss_step(const Laminate& laminate, double step);

/// True if the section of every point with the same thickness is the same in its own frame: no ply is carved.
[[nodiscard]] bool follows_surface(const Laminate& laminate);

/// Compliance of a ply under plane stress (33 = 0) in the shell frame, order (11, 22, 12, 13, 23) [1/Pa].
///
/// @source [Jones1999] eq. 2.85 for a laid ply; rotation of the 3D compliance for a carved one
[[nodiscard]] Eigen::Matrix<double, 5, 5> ply_compliance(const Material& material, Angle angle, Grain grain,
                                                         const Eigen::Matrix3d& frame, const MaterialAxes& axes);

} // namespace plate
