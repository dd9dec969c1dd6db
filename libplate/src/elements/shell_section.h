// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "shell_kinematics.h"

#include <array>
#include <cstddef>
#include <span>
#include <vector>

/// What lies at one point of a shell triangle: plies, bar, and the stiffness of both on the strains of the point.
namespace plate::shell_kinematics
{

/// Volume at distance z over volume at the mid-surface: 1 + linear z + quadratic z^2.
struct VolumeRatio
{
  double linear;    ///< [1/m]
  double quadratic; ///< [1/m2]
};

[[nodiscard]] VolumeRatio volume_ratio(const ShellPoint& p);

/// Moments of z^k P dz with the volume ratio, kept to z^4.
template <class Moments>
[[nodiscard]] Moments with_volume(const Moments& P, const VolumeRatio& ratio)
{
  Moments out = P;
  for (std::size_t k = 0; k < P.size(); ++k)
  {
    if (k + 1 < P.size())
      out[k] += ratio.linear * P[k + 1];
    if (k + 2 < P.size())
      out[k] += ratio.quadratic * P[k + 2];
  }
  return out;
}

/// Plies of the laminate, in the directions they take here, and of the patches over the point.
///
/// @param plies  is overwritten; a buffer of the caller
void plies_at(const ShellPoint& p, const ShellMaterial& material, const TriangleParts& parts,
              std::vector<PlacedPly>& plies);

/// Section of the plate on physical strains.
[[nodiscard]] StrainMatrix plate_stiffness(const SectionStiffness& section, const VolumeRatio& ratio);

/// A bar at one point of its footprint.
struct BarPoint
{
  BarSection section;
  double c; ///< direction of the bar in the frame of the point: c e1 + s e2
  double s;
};

/// Frame of a point with its first axis along the bar.
[[nodiscard]] Eigen::Matrix3d frame_along(const Bar& bar, const ShellPoint& p, const MaterialAxes& axes);

[[nodiscard]] BarPoint bar_point(const Bar& bar, const ShellPoint& p, std::span<const PlacedPly> plies,
                                 const MaterialAxes& axes);

/// Section of the bar on physical strains of the plate above it (torsion apart).
[[nodiscard]] StrainMatrix bar_stiffness(const BarPoint& bar, const VolumeRatio& ratio);

} // namespace plate::shell_kinematics
