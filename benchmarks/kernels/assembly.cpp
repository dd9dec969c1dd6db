// SPDX-License-Identifier: MPL-2.0
// Element matrices, pattern and scatter: a model into its sparse matrices.
#include "support/plates.h"

#include <plate/core/threads.h>

#include <benchmark/benchmark.h>

namespace plate::benchmarks
{
namespace
{

void assembly(benchmark::State& state, Size size)
{
  const Model& model = viola(size).model;
  for (auto _ : state)
    benchmark::DoNotOptimize(assemble(model));
  state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(model.mesh.triangles.size()));
}

/// Of a second model of the same mesh, by the clock.
void assembly_again(benchmark::State& state, Size size)
{
  const Model& model = viola(size).model;
  set_num_threads(static_cast<int>(state.range(0)));
  Assembler assembler;
  benchmark::DoNotOptimize(assembler.assemble(model));
  for (auto _ : state)
    benchmark::DoNotOptimize(assembler.assemble(model));
  set_num_threads(1);
  state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(model.mesh.triangles.size()));
}

constexpr auto ms = benchmark::kMillisecond;
BENCHMARK_CAPTURE(assembly, viola 53k, Size::demo)->Unit(ms);
BENCHMARK_CAPTURE(assembly, viola 130k, Size::fine)->Unit(ms);
BENCHMARK_CAPTURE(assembly_again, viola 53k, Size::demo)->ArgName("cores")->Arg(1)->Arg(2)->Unit(ms)->UseRealTime();
BENCHMARK_CAPTURE(assembly_again, viola 130k, Size::fine)->ArgName("cores")->Arg(1)->Arg(2)->Unit(ms)->UseRealTime();

} // namespace
} // namespace plate::benchmarks
