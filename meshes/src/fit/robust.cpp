// SPDX-License-Identifier: MPL-2.0
#include "robust.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace plate
{

double median(std::vector<double> values)
{
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

double robust_deviation(const std::vector<double>& residuals)
{
  constexpr double gaussian = 1.4826; // standard deviation over the median of |x|
  std::vector<double> sizes;
  sizes.reserve(residuals.size());
  for (const double r : residuals)
    sizes.push_back(std::abs(r));
  return gaussian * median(std::move(sizes));
}

bool choose_used(const std::vector<double>& residuals, double limit, std::vector<char>& used)
{
  double furthest = 0.0;
  for (std::size_t i = 0; i < residuals.size(); ++i)
    if (used[i] != 0)
      furthest = std::max(furthest, std::abs(residuals[i]));
  bool changed = false;
  for (std::size_t i = 0; i < residuals.size(); ++i)
  {
    const double size = std::abs(residuals[i]);
    const char now = size <= limit || (used[i] != 0 && size < 0.5 * furthest) ? 1 : 0;
    changed = changed || now != used[i];
    used[i] = now;
  }
  return changed;
}

} // namespace plate
