// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "plate_drawing.h"

#include <span>
#include <vector>

namespace plate
{

/// A mode shape scaled so that the largest displacement is +1; among equally large ones (within a millionth) the
/// first counts. Values below a billionth, which are rounding, become 0.
/// @throws InvalidInput if the length is wrong, a value is not finite, or all are zero
[[nodiscard]] std::vector<double> picture_shape(const ShellMesh& mesh, std::span<const double> normal_displacement);

/// How much a drawing of a mode shows; sizes in picture units.
struct ModeStyle
{
  double edge_width = 1.2;
  double nodal_width = 2.4;
  double sign_half_width = 6.5;
};

/// Style for a plate drawn small, by its height on the page.
[[nodiscard]] ModeStyle style_for_height(double height);

/// Draws bands, nodal lines, bars, edges and signs of a shape from picture_shape().
void draw_mode(Canvas& canvas, const PlateDrawing& drawing, const Frame& frame, std::span<const double> shape,
               const ModeStyle& style);

/// The colours used by draw_mode(), from -1 to +1.
[[nodiscard]] ColourBar displacement_bar();

} // namespace plate
