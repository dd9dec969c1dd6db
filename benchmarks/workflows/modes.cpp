// SPDX-License-Identifier: MPL-2.0
// From the design to twenty elastic modes: everything that `plate modes` computes but the error bars and the pictures.
#include "support/plates.h"

#include <plate/design/build_model.h>
#include <plate/solvers/modal.h>

#include <benchmark/benchmark.h>

namespace plate::benchmarks
{
namespace
{

constexpr ModalOptions twenty_modes = {.num_modes = 20};

void modes(benchmark::State& state, Size size)
{
  const Design design = viola_design(size);
  for (auto _ : state)
  {
    const Model model = build_model(design);
    const ModalResult found = solve_modes(assemble(model), twenty_modes);
    state.counters["solves"] = found.num_solves;
    state.counters["residual"] = found.residuals.maxCoeff();
  }
}

BENCHMARK_CAPTURE(modes, viola 53k, Size::demo)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(modes, viola 130k, Size::fine)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace plate::benchmarks
