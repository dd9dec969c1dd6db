// SPDX-License-Identifier: MPL-2.0
#include "curve_style.h"

namespace plate
{

Pen curve_pen(std::size_t index)
{
  constexpr double width = 2.2;
  constexpr std::array<std::array<double, 4>, num_curve_pens> patterns = {
      {{}, {8.0, 3.5}, {9.0, 3.0, 2.2, 3.0}, {2.6, 2.6}, {15.0, 3.0}, {5.0, 2.5, 5.0, 6.0}}};
  return {
      .colour = curve_colours()[index % num_curve_pens], .width = width, .dashes = patterns[index % num_curve_pens]};
}

} // namespace plate
