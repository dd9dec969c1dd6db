// SPDX-License-Identifier: MPL-2.0
// The validation cases of one topic: eleven plates by three-dimensional elasticity.
#include <plate/validation/validate.h>

#include <benchmark/benchmark.h>

namespace plate::benchmarks
{
namespace
{

constexpr const char* topic = "Flat and arched plates 350 x 200 mm by three-dimensional elasticity";

void validation_topic(benchmark::State& state)
{
  for (auto _ : state)
  {
    int num_values = 0;
    for (const validation::ReferenceCase& reference : validation::reference_cases())
      if (reference.topic == topic)
        num_values += static_cast<int>(validation::run_case(reference).comparisons.size());
    if (num_values == 0)
      state.SkipWithError("no case of this topic");
    state.counters["values"] = num_values;
  }
}

BENCHMARK(validation_topic)->Name("validation/3D elasticity")->Iterations(1)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace plate::benchmarks
