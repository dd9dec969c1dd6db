// SPDX-License-Identifier: MPL-2.0
// Element matrices, pattern and scatter: a model into its sparse matrices.
#include "support/plates.h"

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

BENCHMARK_CAPTURE(assembly, viola 53k, Size::demo)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(assembly, viola 130k, Size::fine)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace plate::benchmarks
