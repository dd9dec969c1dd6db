// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "plate_drawing.h"

#include <span>
#include <string>
#include <vector>

namespace plate
{

/// A mode shape scaled so that the largest displacement is +1; among equally large ones (within a millionth) the
/// first counts. Values below a billionth, which are rounding, become 0.
/// @throws InvalidInput if the length is wrong, a value is not finite, or all are zero
[[nodiscard]] std::vector<double> picture_shape(const ShellMesh& mesh, std::span<const double> normal_displacement);

/// How strongly a mode is drawn; sizes in picture units.
struct ModeStyle
{
  PlateStyle plate;
  double contour_width = 0.4; ///< of the lines at each fifth of the largest displacement; 0 for none
  double nodal_width = 2.4;
  double sign_half_width = 6.5;
};

/// Style for a plate drawn small, by its height on the page.
[[nodiscard]] ModeStyle style_for_height(double height);

/// Draws colours, nodal lines, bars, edges, marks and signs of a shape from picture_shape().
void draw_mode(Canvas& canvas, const PlateDrawing& drawing, const Frame& frame, std::span<const double> shape,
               const ModeStyle& style);

/// Explains what draw_mode() draws.
[[nodiscard]] Legend mode_legend(const PlateDrawing& drawing, const ModeStyle& style);

/// "64.2 Hz"
[[nodiscard]] std::string hertz(double frequency_hz);
/// "loss 1.62 %", empty without a loss
[[nodiscard]] std::string loss_words(const ModeShapePicture& mode);
/// Number and name: "5 · M5 ring", or only the number
[[nodiscard]] std::string mode_words(const ModeShapePicture& mode);

} // namespace plate
