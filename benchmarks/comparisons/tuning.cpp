// SPDX-License-Identifier: MPL-2.0
#include "tuning.h"

#include <plate/core/error.h>

#include <chrono>
#include <limits>

namespace plate::benchmarks
{
namespace
{

double seconds_of(const Eigensolver& solver, const Eigenproblem& problem, const EigenSettings& settings)
{
  const auto start = std::chrono::steady_clock::now();
  const EigenPairs pairs = solver(problem, settings);
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

} // namespace

EigenSettings fastest_settings(const Eigensolver& solver, const Eigenproblem& problem)
{
  EigenSettings best;
  double least = std::numeric_limits<double>::infinity();
  for (const bool deflate : {true, false})
    for (const int krylov_size : {36, 46, 64}) // 1.4, 1.8 and 2.5 times the 26 modes with the rigid ones
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
