// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "axis.h"
#include "canvas.h"

#include <string>
#include <vector>

namespace plate
{

/// The area that curves are drawn in, picture units.
struct PlotFrame
{
  double left;
  double right;
  double top;
  double bottom;
};

/// A value that an axis names.
struct AxisMark
{
  double at; ///< on the page, picture units
  std::string words;
};

/// Round values of an axis, about `wanted` of them.
[[nodiscard]] std::vector<AxisMark> round_marks(const Axis& axis, int wanted);

/// Lines up from the axis along the lower side, its values, and what they are.
void draw_lower_axis(Canvas& canvas, const PlotFrame& frame, const std::vector<AxisMark>& marks,
                     const std::string& words);

/// Lines across from the axis along the left side, its values, what they are, and the frame's left and lower side.
void draw_upright_axis(Canvas& canvas, const PlotFrame& frame, const std::vector<AxisMark>& marks,
                       const std::string& words);

} // namespace plate
