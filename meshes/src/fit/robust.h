// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <vector>

namespace plate
{

/// Residuals further off than this many standard deviations are no noise: one in two million of a Gaussian would be.
inline constexpr double outlier_deviations = 5.0;

/// Median of values, which are reordered; at least one.
[[nodiscard]] double median(std::vector<double> values);

/// Standard deviation of Gaussian residuals from the median of their sizes, which outliers hardly move.
[[nodiscard]] double robust_deviation(const std::vector<double>& residuals);

/// Which points to use next, from the residuals of all of them.
///
/// Points beyond the limit are left out, but in one step only those at least half as far off as the furthest of those
/// in use: a far outlier bends the fit, and its neighbours must not go with it. Points that have come within the limit
/// are used again.
///
/// @param used   changed; not zero for points in use
/// @param limit  residual beyond which a point is an outlier
/// @return whether anything changed
bool choose_used(const std::vector<double>& residuals, double limit, std::vector<char>& used);

} // namespace plate
