// SPDX-License-Identifier: MPL-2.0
#include "plot_axes.h"

#include <numbers>

namespace plate
{

namespace
{

constexpr Pen grid_pen{.colour = pale, .width = 0.6};
constexpr Pen axis_pen{.width = 0.8};

} // namespace

std::vector<AxisMark> round_marks(const Axis& axis, int wanted)
{
  const Ticks ticks = round_ticks(axis.low, axis.high, wanted);
  std::vector<AxisMark> marks;
  for (const double value : ticks.values)
    marks.push_back({.at = axis.on_page(value), .words = label_number(value, ticks.decimals)});
  return marks;
}

void draw_lower_axis(Canvas& canvas, const PlotFrame& frame, const std::vector<AxisMark>& marks,
                     const std::string& words)
{
  for (const AxisMark& mark : marks)
  {
    canvas.line({mark.at, frame.bottom}, {mark.at, frame.top}, grid_pen);
    canvas.line({mark.at, frame.bottom}, {mark.at, frame.bottom + 4.0}, axis_pen);
    canvas.text({mark.at, frame.bottom + 13.0}, mark.words, aligned(label_text, Align::centre));
  }
  canvas.text({0.5 * (frame.left + frame.right), frame.bottom + 31.0}, words, aligned(strong_text, Align::centre));
}

void draw_upright_axis(Canvas& canvas, const PlotFrame& frame, const std::vector<AxisMark>& marks,
                       const std::string& words)
{
  for (const AxisMark& mark : marks)
  {
    canvas.line({frame.left, mark.at}, {frame.right, mark.at}, grid_pen);
    canvas.text({frame.left - 6.0, mark.at}, mark.words, aligned(label_text, Align::right));
  }
  canvas.line({frame.left, frame.bottom}, {frame.left, frame.top}, axis_pen);
  canvas.line({frame.left, frame.bottom}, {frame.right, frame.bottom}, axis_pen);
  TextStyle upright = aligned(strong_text, Align::centre);
  upright.turn = -0.5 * std::numbers::pi;
  canvas.text({14.0, 0.5 * (frame.top + frame.bottom)}, words, upright);
}

} // namespace plate
