// SPDX-License-Identifier: MPL-2.0
#include "spline_basis.h"

#include <algorithm>
#include <cmath>

namespace plate
{

SplineBasis::SplineBasis(int degree, double low, double high, int intervals, Ends ends)
    : degree_(degree), low_(low), step_((high - low) / intervals), intervals_(intervals), ends_(ends)
{
}

double SplineBasis::knot(int i) const
{
  const int interval = i - degree_;
  return low_ + step_ * (ends_ == Ends::clamped ? std::clamp(interval, 0, intervals_) : interval);
}

SplineBasis::Local SplineBasis::at(double x, int derivative) const
{
  x = std::clamp(x, low_, low_ + step_ * intervals_);
  const int span = std::clamp(static_cast<int>(std::floor((x - low_) / step_)), 0, intervals_ - 1);
  // From degree to degree by the recursion of Cox and de Boor; the last steps differentiate.
  std::array<double, greatest_degree + 1> row{1.0};
  for (int degree = 1; degree <= degree_; ++degree)
  {
    std::array<double, greatest_degree + 1> next{};
    const int first = span + degree_ - degree + 1; // knot at which the second spline of the row begins
    for (int j = 0; j < degree; ++j)
    {
      const double begin = knot(first + j);
      const double width = knot(first + j + degree) - begin; // of the support of spline j of the lower degree
      const double share = row[static_cast<std::size_t>(j)] / width;
      const bool differentiate = degree > degree_ - derivative;
      next[static_cast<std::size_t>(j) + 1] += differentiate ? degree * share : (x - begin) * share;
      next[static_cast<std::size_t>(j)] += differentiate ? -degree * share : (begin + width - x) * share;
    }
    row = next;
  }
  return {.first = span, .values = row};
}

} // namespace plate
