// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

namespace plate
{

/// A straight axis: data from `low` to `high` onto the page from `page_low` to `page_high`.
struct Axis
{
  double low = 0.0;
  double high = 1.0;
  double page_low = 0.0;  ///< picture units
  double page_high = 1.0; ///< picture units

  [[nodiscard]] double on_page(double value) const
  {
    return page_low + (value - low) / (high - low) * (page_high - page_low);
  }
};

/// Round values of an axis and the decimals they need.
struct Ticks
{
  std::vector<double> values;
  double step = 1.0;
  int decimals = 0;
};

/// Multiples of 1, 2 or 5 times a power of ten between two values, about `wanted` of them.
[[nodiscard]] inline Ticks round_ticks(double low, double high, int wanted)
{
  const double raw = (high - low) / std::max(wanted, 1);
  const double power = std::pow(10.0, std::floor(std::log10(raw)));
  const double lead = raw / power;
  Ticks ticks;
  ticks.step = power * (lead < 1.5 ? 1.0 : lead < 3.5 ? 2.0 : lead < 7.5 ? 5.0 : 10.0);
  ticks.decimals = std::max(0, static_cast<int>(-std::floor(std::log10(ticks.step) + 1e-9)));
  const auto first = static_cast<long>(std::ceil(low / ticks.step - 1e-9));
  const auto last = static_cast<long>(std::floor(high / ticks.step + 1e-9));
  for (long k = first; k <= last; ++k)
    ticks.values.push_back(static_cast<double>(k) * ticks.step);
  return ticks;
}

} // namespace plate
