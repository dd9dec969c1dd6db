// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "panel_mesh.h"

#include <vector>

namespace plate
{

/// The functions among which the jump of the pressure is sought: linear in each panel, zero along edges.
///
/// Near an edge the jump grows as the square root of the distance. The panels there are cut along lines parallel to the
/// edge, and the values on these lines follow from those of the vertices behind them, so that the functions show the
/// root without further unknowns.
struct PressureSpace
{
  static constexpr int none = -1;
  PanelMesh panels;           ///< cut
  std::vector<int> unknown;   ///< per vertex the unknown it belongs to, or none along edges
  std::vector<double> factor; ///< value of the vertex per unknown [-]
  int num_unknowns = 0;
};

/// @throws InvalidInput if the surface has no edge
[[nodiscard]] PressureSpace pressure_space(const PanelMesh& panels);

} // namespace plate
