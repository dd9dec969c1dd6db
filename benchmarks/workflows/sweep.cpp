// SPDX-License-Identifier: MPL-2.0
// Seven designs of the laminated demo viola, modes followed by shape: the example of `plate sweep` in the README.
#include "support/plates.h"

#include <plate/design/design_model.h>
#include <plate/solvers/studies/sweep.h>

#include <benchmark/benchmark.h>

namespace plate::benchmarks
{
namespace
{

void sweep_of_seven(benchmark::State& state)
{
  const DesignDocument document = DesignDocument::from_file(in_repository("examples/viola/laminate_top.toml"));
  const std::vector<std::vector<double>> points = {{0.7}, {0.8}, {0.9}, {1.0}, {1.1}, {1.2}, {1.3}};
  for (auto _ : state)
  {
    DesignModel design(document, {"layup.scale"});
    const SweepResult result = sweep(design, points, points.size());
    state.counters["solved"] = result.num_solved;
  }
}

BENCHMARK(sweep_of_seven)->Name("sweep/viola, 7 points")->Iterations(1)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace plate::benchmarks
