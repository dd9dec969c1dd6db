// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "held_system.h"

#include <plate/validation/structured_mesh.h>

namespace plate::validation
{

/// What a hinge of the Navier solutions holds beside w and the tangential turn.
enum class NavierEdge
{
  tangential, ///< displacement along the edge: cross-plies
  normal      ///< displacement across the edge: antisymmetric angle-plies
};

/// Simple supports for which a double sine is exact, on the four sides of a rectangle about the origin.
[[nodiscard]] HoldRule simply_supported(double length, double width, NavierEdge edge);

/// The same without stretching: the mid-surface moves along z only.
[[nodiscard]] HoldRule bending_only(double length, double width);

/// Flat rectangle of equal cells.
[[nodiscard]] ShellMesh even_rectangle(double length, double width, int cells_x, int cells_y, double thickness);

} // namespace plate::validation
