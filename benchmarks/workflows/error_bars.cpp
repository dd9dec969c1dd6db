// SPDX-License-Identifier: MPL-2.0
// What the estimate of the discretisation error costs beside the modes it judges.
#include "support/plates.h"

#include <plate/solvers/modal.h>
#include <plate/solvers/mode_errors.h>

#include <benchmark/benchmark.h>

namespace plate::benchmarks
{
namespace
{

constexpr ModalOptions twenty_modes = {.num_modes = 20};

void eigensolve(benchmark::State& state, Size size)
{
  const System& system = viola(size).system;
  for (auto _ : state)
    benchmark::DoNotOptimize(solve_modes(system, twenty_modes));
}

void error_bars(benchmark::State& state, Size size)
{
  const Plate& plate = viola(size);
  const ModalResult modes = solve_modes(plate.system, twenty_modes);
  for (auto _ : state)
    benchmark::DoNotOptimize(mode_errors(plate.model, plate.system, modes));
}

BENCHMARK_CAPTURE(eigensolve, viola 53k, Size::demo)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(eigensolve, viola 130k, Size::fine)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(error_bars, viola 53k, Size::demo)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(error_bars, viola 130k, Size::fine)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace plate::benchmarks
