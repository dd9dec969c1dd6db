// SPDX-License-Identifier: MPL-2.0
#include "tuning.h"

#include <plate/core/error.h>

#include <ctime>
#include <limits>

namespace plate::benchmarks
{
namespace
{

/// Processor time: other programs on the machine must not decide.
double seconds_of(const Eigensolver& solver, const Eigenproblem& problem, const EigenSettings& settings)
{
  const std::clock_t start = std::clock();
  const EigenPairs pairs = solver(problem, settings);
  return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

} // namespace

EigenSettings fastest_settings(const Eigensolver& solver, const Eigenproblem& problem)
{
  EigenSettings best;
  double least = std::numeric_limits<double>::infinity();
  for (const bool deflate : {true, false})
    for (const int krylov_size : {36, 46}) // 1.4 and 1.8 times the 26 modes with the rigid ones; 64 was slower
    {
      const EigenSettings settings{.tolerance = 1e-8, .krylov_size = krylov_size, .deflate = deflate};
      if (const double seconds = seconds_of(solver, problem, settings); seconds < least)
      {
        least = seconds;
        best = settings;
      }
    }
  return best;
}

double loosest_tolerance(const Eigensolver& solver, const Eigenproblem& problem, EigenSettings settings, double largest)
{
  constexpr double tightest = 1e-14;
  for (settings.tolerance = 1e-3; settings.tolerance > tightest; settings.tolerance /= 10.0)
    if (largest_residual(problem, solver(problem, settings)) <= largest)
      return settings.tolerance;
  throw NumericalFailure(message("no tolerance gives residuals of ", largest));
}

} // namespace plate::benchmarks
