// SPDX-License-Identifier: MPL-2.0
// Stiffness and mass of every triangle, without putting them together.
#include "support/plates.h"

#include <benchmark/benchmark.h>

namespace plate::benchmarks
{
namespace
{

void element_matrices(benchmark::State& state, Size size)
{
  const Model& model = viola(size).model;
  const std::size_t num_triangles = model.mesh.triangles.size();
  ShellTriangle::Matrix K;
  ShellTriangle::MassMoments mass;
  for (auto _ : state)
  {
    const std::vector<TriangleCover> covers = triangle_covers(model);
    for (std::size_t t = 0; t < num_triangles; ++t)
    {
      const ElementInput element = element_input(model, t, covers[t]);
      ShellTriangle::matrices(element.nodes, model.material, element.parts, K, mass);
      benchmark::DoNotOptimize(K.data());
      benchmark::DoNotOptimize(mass.data());
    }
  }
  state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(num_triangles));
}

BENCHMARK_CAPTURE(element_matrices, viola 53k, Size::demo)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(element_matrices, viola 130k, Size::fine)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace plate::benchmarks
