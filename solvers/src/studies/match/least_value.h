// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <functional>
#include <vector>

namespace plate::match
{

/// Where a function of a few variables is looked for its least value.
struct SearchBox
{
  std::vector<double> low;
  std::vector<double> high;
  std::vector<double> start; ///< within
};

/// A place of a low value near the start, never a higher one than there. The same on every run.
///
/// @param function  continuous; it need not be smooth
/// @source subspace simplex, T. Rowan, Functional stability analysis of numerical algorithms, 1990, as in NLopt
[[nodiscard]] std::vector<double> least_value(const std::function<double(const std::vector<double>&)>& function,
                                              const SearchBox& box);

} // namespace plate::match
