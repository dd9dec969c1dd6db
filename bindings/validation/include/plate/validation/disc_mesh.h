// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/validation/structured_mesh.h>

namespace plate::validation
{

/// An ellipse cut into six sectors of rings.
struct Disc
{
  double semi_x;             ///< [m]
  double semi_y;             ///< [m]
  std::vector<double> rings; ///< outer radius of each ring over that of the edge, ascending, the last is 1
  Surface surface;
  double thickness; ///< [m]
};

/// Mesh with the boundary group "outline".
[[nodiscard]] ShellMesh disc_mesh(const Disc& disc);

/// Radii of equal rings and a narrow one at the edge, `strip` of the radius wide.
[[nodiscard]] std::vector<double> rings_with_strip(int count, double strip);

} // namespace plate::validation
