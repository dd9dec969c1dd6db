// SPDX-License-Identifier: MPL-2.0
#include "least_value.h"

#include <plate/core/error.h>

#include <nlopt.hpp>

namespace plate::match
{

namespace
{

using Function = std::function<double(const std::vector<double>&)>;

double called(const std::vector<double>& x, std::vector<double>&, void* function)
{
  return (*static_cast<const Function*>(function))(x);
}

} // namespace

std::vector<double> least_value(const Function& function, const SearchBox& box)
{
  constexpr double fineness = 1e-4;            // of the range of a variable
  constexpr int evaluations_per_variable = 60; // then the simplex has shrunk to a thousandth (seen)
  const auto n = static_cast<unsigned>(box.start.size());
  Function held = function;
  std::vector<double> step(n);
  std::vector<double> tolerance(n);
  for (unsigned k = 0; k < n; ++k)
  {
    step[k] = 0.25 * (box.high[k] - box.low[k]);
    tolerance[k] = fineness * (box.high[k] - box.low[k]);
  }
  try
  {
    nlopt::opt optimiser(nlopt::LN_SBPLX, n);
    optimiser.set_lower_bounds(box.low);
    optimiser.set_upper_bounds(box.high);
    optimiser.set_initial_step(step);
    optimiser.set_xtol_abs(tolerance);
    optimiser.set_maxeval(evaluations_per_variable * static_cast<int>(n));
    optimiser.set_min_objective(called, &held);
    std::vector<double> x = box.start;
    double least = 0.0;
    optimiser.optimize(x, least);
    return least <= function(box.start) ? x : box.start;
  }
  catch (const nlopt::roundoff_limited&)
  {
    return box.start;
  }
}

} // namespace plate::match
