// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "canvas.h"
#include "polyline.h"

#include <string>
#include <vector>

namespace plate
{

/// The lines of one level, on the page, and what is written on them.
struct LabelledContour
{
  std::vector<Polyline> lines; ///< picture units
  std::string label;
  Pen pen;
  Colour text_colour = black;
  bool is_index = false; ///< one of the bold lines that get their labels first
};

/// Draws contours with their labels set into gaps of the lines, upright and along the line.
///
/// A label stands where its line is straight and far from other lines; it never touches another label, another
/// line or an edge, and is left out where there is no such place.
void draw_labelled_contours(Canvas& canvas, const std::vector<LabelledContour>& contours,
                            const std::vector<Polyline>& edges);

} // namespace plate
