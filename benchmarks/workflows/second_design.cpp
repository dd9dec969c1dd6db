// SPDX-License-Identifier: MPL-2.0
// A changed design whose mesh is moved from that of the first, as in sweeps and searches: modes of the changed one.
#include "support/plates.h"

#include <plate/design/design_model.h>
#include <plate/solvers/modal.h>

#include <benchmark/benchmark.h>

#include <array>

namespace plate::benchmarks
{
namespace
{

void second_design(benchmark::State& state)
{
  DesignModel design(DesignDocument::from_file(in_repository("examples/viola/spruce_top.toml")), {"arching.height"});
  const std::array<double, 1> first = {12.1};   // [mm]
  const std::array<double, 1> changed = {12.6}; // [mm]
  Assembler assembler;
  ModalSolver solver;
  benchmark::DoNotOptimize(solver.solve(assembler.assemble(design.build(first)), {.num_modes = 20}));
  for (auto _ : state)
    benchmark::DoNotOptimize(solver.solve(assembler.assemble(design.build(changed)), {.num_modes = 20}));
}

BENCHMARK(second_design)->Name("second_design/viola 53k")->Unit(benchmark::kMillisecond);

} // namespace
} // namespace plate::benchmarks
