// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/laminates/section.h>

#include <Eigen/Core>

#include <array>
#include <memory>
#include <span>
#include <vector>

namespace plate
{

/// Strains of a shell point in its frame, see shell_frame().
struct SectionStrains
{
  /// Columns: strains (11, 22, 12) at z = 0 and their coefficients of z and z^2 [-, 1/m, 1/m2].
  Eigen::Matrix3d in_plane = Eigen::Matrix3d::Zero();
  Eigen::Vector2d shear = Eigen::Vector2d::Zero(); ///< transverse (13, 23), that of the director [-]
  /// Derivatives of the transverse shear strain along the frame's first (column 0) and second axis [1/m].
  Eigen::Matrix2d shear_slope = Eigen::Matrix2d::Zero();
};

/// Stress or strain in the axes of a material, order (11, 22, 33, 23, 13, 12), engineering shear strains.
using MaterialComponents = Eigen::Matrix<double, 6, 1>;

/// Stresses of the plies of one section. It keeps what costs time, so that several states of strain cost little more
/// than one.
///
/// In the plane they follow from the strains, and from the warping of the cross-section: plies that give way in shear
/// by different amounts bend its straight line, which first-order theory leaves out. Where the shear force changes
/// along the plate this makes stresses that have neither force nor moment, worth 4 % in a laminate of a twentieth of
/// its length, in proportion to the square of the thickness. Through the thickness from equilibrium of the plies in
/// cylindrical bending, scaled to the shear force: continuous from ply to ply, zero on both faces.
/// @source [Rohwer1988]; pinned by tests/unit/laminates/ply_stress_test.cpp
class PlyStresses
{
public:
  /// @param plies  from inside to outside; their materials must outlive the object
  PlyStresses(std::span<const PlacedPly> plies, const Eigen::Matrix3d& frame, const MaterialAxes& axes);
  ~PlyStresses();
  PlyStresses(PlyStresses&&) noexcept;
  PlyStresses& operator=(PlyStresses&&) noexcept;

  /// Stress in a ply at a distance z from the reference surface [Pa].
  [[nodiscard]] MaterialComponents stress(std::size_t ply, double z, const SectionStrains& strains) const;

  /// Stress that the free expansion of the plies leaves in a section without outer forces [Pa].
  ///
  /// @param change  of temperature [K]; negative on cooling from the cure
  /// @throws InvalidInput if a ply has no thermal expansion
  [[nodiscard]] MaterialComponents cure_stress(std::size_t ply, double z, double change) const;

private:
  struct Implementation;
  std::unique_ptr<Implementation> implementation_;
};

/// Strain from stress in the axes of the material.
[[nodiscard]] MaterialComponents strain_of(const Material& material, const MaterialComponents& stress);

} // namespace plate
