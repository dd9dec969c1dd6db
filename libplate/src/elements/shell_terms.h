// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "shell_section.h"

/// Terms of strain and kinetic energy at a point, on the gradients of displacement and director.
namespace plate::shell_kinematics
{

/// Physical strains of a point from its gradients: in-plane strain constant, linear and quadratic in z, then transverse
/// shear.
///
/// Covariant strains are E(z) = E0 + z E1 + z^2 E2 in the orthonormal frame, eps(z) = (1 + z b)^-1 E(z) (1 + z b)^-T,
/// kept to z^2.
[[nodiscard]] FrameGradientRows<num_strains> strain_rows(const ShellPoint& p);

/// Rate of twist of the bar: how its cross-section turns about it, free of rigid motion.
[[nodiscard]] FrameGradientRows<1> twist_row(const ShellPoint& p, const BarPoint& bar);

/// Calls visit(area, rows, stiffness on the rows) for a point: the one description of the strain energy.
template <class Visit>
void visit_energy(const ShellPoint& p, const ShellMaterial& material, const TriangleParts& parts,
                  std::span<const PlacedPly> plies, const Visit& visit)
{
  const VolumeRatio ratio = volume_ratio(p);
  StrainMatrix C = plate_stiffness(section_stiffness(plies, p.frame, material.axes), ratio);
  if (parts.bar != nullptr)
  {
    const BarPoint point = bar_point(*parts.bar, p, plies, material.axes);
    C += bar_stiffness(point, ratio);
    if (parts.bar_torsion != nullptr)
    {
      const Eigen::Matrix<double, 1, 1> torsion(parts.bar_torsion->at(p.station) / parts.bar->width);
      visit(p.area, twist_row(p, point), torsion);
    }
  }
  visit(p.area, strain_rows(p), C);
}

/// Moments of the mass of order 0, 1, 2 at a point: the one description of the kinetic energy [kg/m2, kg/m, kg].
[[nodiscard]] std::array<double, 3> inertia(const ShellPoint& p, const ShellMaterial& material,
                                            const TriangleParts& parts, std::span<const PlacedPly> plies);

} // namespace plate::shell_kinematics
