// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/elements/shell_triangle.h>
#include <plate/laminates/ply_stress.h>

#include <Eigen/Core>

#include <optional>
#include <span>
#include <vector>

namespace plate
{

/// A bar under one point of a plate.
struct BarStrainPoint
{
  double top;                ///< z of the glue line [m]
  double bottom;             ///< z of its lower face [m]
  Eigen::Vector2d direction; ///< of the bar in the frame of the point, unit [-]
  BarSection section;
};

/// What lies at one point of a shell triangle, and how it strains under displacement fields.
struct ShellStrainPoint
{
  Eigen::Vector3d position;     ///< on the mid-surface [m]
  Eigen::Matrix3d frame;        ///< e1, e2, normal
  std::vector<PlacedPly> plies; ///< of laminate and patches, from inside to outside
  std::optional<BarStrainPoint> bar;
  std::vector<SectionStrains> strains; ///< one for each field
};

/// Strains of a triangle at natural coordinates, as the energy of ShellTriangle has them.
///
/// @param places  (xi, eta) of the points
/// @param u       unknowns of the nodes of the triangle, one column for each field
[[nodiscard]] std::vector<ShellStrainPoint> shell_strains(const ShellTriangleNodes& nodes,
                                                          const ShellMaterial& material, const TriangleParts& parts,
                                                          std::span<const Eigen::Vector2d> places,
                                                          const ShellTriangle::Displacements& u);

/// Stress in a bar's own axes: along it at a distance z from the reference surface, and shear through its height, mean
/// over the height times 3/2 as in the middle of a rectangle [Pa].
[[nodiscard]] MaterialComponents bar_stress(const BarStrainPoint& bar, double z, const SectionStrains& strains);

} // namespace plate
