// SPDX-License-Identifier: MPL-2.0
// A design into the model on its mesh.
#include "support/plates.h"

#include <plate/design/build_model.h>

#include <benchmark/benchmark.h>

namespace plate::benchmarks
{
namespace
{

void mesh(benchmark::State& state, Size size)
{
  const Design design = viola_design(size);
  for (auto _ : state)
    benchmark::DoNotOptimize(build_model(design));
}

BENCHMARK_CAPTURE(mesh, viola 53k, Size::demo)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(mesh, viola 130k, Size::fine)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace plate::benchmarks
