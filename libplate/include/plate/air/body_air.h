// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/air/cavity_walls.h>
#include <plate/air/hole_flow.h>
#include <plate/materials/air.h>

#include <vector>

namespace plate
{

/// The air of a body: plain data.
struct BodyAir
{
  CavityMesh cavity;
  std::vector<HoleOutline> holes; ///< of one plate, none for a closed body
  std::vector<WallSide> sides;    ///< of the body's parts, whose normals point out of the body
  Air air;
  double solids = 0.0;     ///< volume of the cavity that is no air, such as blocks [m3]
  double hole_loss = 0.01; ///< friction in the holes over their inertia; the default is assumed, no source [-]
};

} // namespace plate
