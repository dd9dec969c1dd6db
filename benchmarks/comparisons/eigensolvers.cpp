// SPDX-License-Identifier: MPL-2.0
// Twenty elastic modes of the demo viola by libplate and by general eigensolvers: the same K and M, the same shift,
// residuals as small as ours, each solver at its best settings and with its factorisation counted.
#include "support/plates.h"
#include "tuning.h"

#ifdef LIBPLATE_BENCHMARKS_ARPACK
#include "arpack_modes.h"
#endif
#ifdef LIBPLATE_BENCHMARKS_SLEPC
#include "slepc_modes.h"
#endif

#include <plate/core/error.h>
#include <plate/solvers/modal.h>

#include <benchmark/benchmark.h>

#include <algorithm>
#include <map>
#include <string>
#include <utility>

namespace plate::benchmarks
{
namespace
{

constexpr ModalOptions twenty_modes = {.num_modes = 20};

/// Residual that the others have to reach: ours, or what is small enough. Near the rounding of K x (2e-9 at 53 000
/// unknowns) it varies by chance, which must not make them work in vain.
double wanted_residual(Size size)
{
  constexpr double small_enough = 1e-8;
  constexpr double allowance = 1.25;
  return std::max(small_enough, allowance * solve_modes(viola(size).system, twenty_modes).residuals.maxCoeff());
}

const Eigenproblem& problem_of(Size size)
{
  static std::map<Size, Eigenproblem> made;
  const auto found = made.find(size);
  if (found != made.end())
    return found->second;
  const Plate& plate = viola(size);
  return made
      .emplace(size, make_eigenproblem(plate.system.K, plate.system.M, plate.system.rigid_motions,
                                       unknowns_by_node(plate.system.dofs), plate.shift))
      .first->second;
}

void libplate(benchmark::State& state, Size size)
{
  const System& system = viola(size).system;
  for (auto _ : state)
  {
    const ModalResult modes = solve_modes(system, twenty_modes);
    state.counters["solves"] = modes.num_solves;
    state.counters["residual"] = modes.residuals.maxCoeff();
  }
}

/// What all of them need first.
void factor_alone(benchmark::State& state, Size size)
{
  const Eigenproblem& problem = problem_of(size);
  for (auto _ : state)
    benchmark::DoNotOptimize(factorise(problem));
}

/// Settings found once for each solver, tolerance for each size.
EigenSettings settings_of(const std::string& name, const Eigensolver& solver, Size size)
{
  static std::map<std::string, EigenSettings> fastest;
  static std::map<std::pair<std::string, Size>, double> tolerance;
  if (fastest.count(name) == 0)
    fastest[name] = fastest_settings(solver, problem_of(Size::demo));
  EigenSettings settings = fastest[name];
  if (tolerance.count({name, size}) == 0)
    tolerance[{name, size}] = loosest_tolerance(solver, problem_of(size), settings, wanted_residual(size));
  settings.tolerance = tolerance[{name, size}];
  return settings;
}

void measure(benchmark::State& state, const std::string& name, const Eigensolver& solver, Size size)
{
  const Eigenproblem& problem = problem_of(size);
  const EigenSettings settings = settings_of(name, solver, size);
  EigenPairs pairs;
  for (auto _ : state)
    pairs = solver(problem, settings);
  state.counters["solves"] = pairs.num_solves;
  state.counters["residual"] = largest_residual(problem, pairs);
  state.counters["tolerance"] = settings.tolerance;
  state.counters["krylov_size"] = settings.krylov_size;
  state.counters["deflated"] = settings.deflate ? 1.0 : 0.0;
}

[[maybe_unused]] void other(benchmark::State& state, const std::string& name, const Eigensolver& solver, Size size)
{
  try
  {
    measure(state, name, solver, size);
  }
  catch (const NumericalFailure& failure)
  {
    state.SkipWithError(failure.what());
  }
}

template <class Function>
void add(const std::string& name, Function run)
{
  for (const Size size : {Size::demo, Size::fine})
    benchmark::RegisterBenchmark((name + "/" + name_of(size)).c_str(),
                                 [run, size](benchmark::State& state) { run(state, size); })
        ->Iterations(1)
        ->Unit(benchmark::kMillisecond);
}

[[maybe_unused]] void add_other(const std::string& name, const Eigensolver& solver)
{
  add("20 modes/" + name, [name, solver](benchmark::State& state, Size size) { other(state, name, solver, size); });
}

const bool registered = []
{
  add("20 modes/libplate", libplate);
  add("20 modes/factor alone", factor_alone);
#ifdef LIBPLATE_BENCHMARKS_ARPACK
  add_other("ARPACK on our factor", [](const Eigenproblem& problem, const EigenSettings& settings)
            { return arpack_modes(problem, factorise(problem), settings); });
#endif
#ifdef LIBPLATE_BENCHMARKS_SLEPC
  for (const auto& [name, factor] :
       {std::pair{"SLEPc on our factor", SlepcFactor::ours}, std::pair{"SLEPc on CHOLMOD", SlepcFactor::cholmod},
        std::pair{"SLEPc on MUMPS", SlepcFactor::mumps}})
    add_other(name, [factor = factor](const Eigenproblem& problem, const EigenSettings& settings)
              { return slepc_modes(problem, factor, settings); });
#endif
  return true;
}();

} // namespace
} // namespace plate::benchmarks
