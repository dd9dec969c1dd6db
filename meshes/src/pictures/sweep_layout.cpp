// SPDX-License-Identifier: MPL-2.0
#include "sweep_layout.h"

#include <plate/core/units.h>

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

constexpr double left_margin = 58.0;
constexpr double right_margin = 18.0;
constexpr double title_height = 46.0;
constexpr double foot = 62.0;
constexpr double mass_height = 92.0;
constexpr double mass_gap = 20.0;
constexpr double curve_width = 400.0;
constexpr double start_label_width = 52.0;
constexpr double end_label_width = 104.0;
constexpr double smallest_picture = 58.0;
constexpr double largest_picture = 84.0;
constexpr double least_panel = 430.0;
constexpr double between_pictures = 5.0;

struct Range
{
  double low = 0.0;
  double high = 0.0;
};

/// Of all frequencies that were found [Hz].
Range frequency_range(const SweepCurves& sweep)
{
  Range range;
  bool is_first = true;
  for (const SweepTrack& track : sweep.tracks)
    for (const double f : track.frequency_hz)
      if (std::isfinite(f))
      {
        range.low = is_first ? f : std::min(range.low, f);
        range.high = is_first ? f : std::max(range.high, f);
        is_first = false;
      }
  return range;
}

Axis mass_axis(const std::vector<double>& mass, double top)
{
  const auto [low, high] = std::minmax_element(mass.begin(), mass.end());
  const double range = std::max(grams * (*high - *low), 1.0); // [g]
  return {.low = grams * *low - 0.12 * range,
          .high = grams * *high + 0.12 * range,
          .page_low = top + mass_height,
          .page_high = top};
}

} // namespace

SweepLayout sweep_layout(const SweepCurves& sweep, double aspect)
{
  SweepLayout layout;
  const double count = static_cast<double>(std::max<std::size_t>(sweep.tracks.size(), 1));
  const double panel = std::max(least_panel, count * (smallest_picture + between_pictures));
  const double height = std::clamp(panel / count - between_pictures, smallest_picture, largest_picture);
  layout.picture = {height * aspect, height};
  layout.frame_left = left_margin;
  const double curves_left = left_margin + 8.0 + start_label_width + layout.picture[0] + layout.leader;
  const double curves_right = curves_left + curve_width;
  layout.frame_right = curves_right + layout.leader + layout.picture[0] + end_label_width;
  layout.key = {
      .low = sweep.values.front(), .high = sweep.values.back(), .page_low = curves_left, .page_high = curves_right};

  const Range found = frequency_range(sweep);
  const double range = std::max(found.high - found.low, 0.05 * found.high);
  // Half a picture of air above and below, but not below zero.
  const double air = 0.55 * height / panel * range + 0.02 * range;
  layout.frequency = {.low = std::max(0.0, found.low - air),
                      .high = found.high + air,
                      .page_low = title_height + panel,
                      .page_high = title_height};
  layout.bottom = title_height + panel;
  if (!sweep.mass.empty())
  {
    layout.mass = mass_axis(sweep.mass, layout.bottom + mass_gap);
    layout.bottom = layout.mass.page_low;
  }
  layout.page = {layout.frame_right + right_margin, layout.bottom + foot};
  return layout;
}

} // namespace plate
