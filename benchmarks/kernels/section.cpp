// SPDX-License-Identifier: MPL-2.0
// Stiffness of one section: a laid sandwich and carved wood on a slope.
#include "support/plates.h"

#include <plate/design/design_document.h>
#include <plate/laminates/section.h>

#include <benchmark/benchmark.h>

namespace plate::benchmarks
{
namespace
{

void section(benchmark::State& state, const char* file)
{
  const Design design = DesignDocument::from_file(in_repository(file)).design();
  const MaterialAxes axes;
  const Eigen::Matrix3d frame = shell_frame(Eigen::Vector3d(0.1, 0.2, 1.0).normalized(), axes);
  const double thickness = total_thickness(design.laminate);
  for (auto _ : state)
    benchmark::DoNotOptimize(section_stiffness(design.laminate, thickness, frame, axes));
  state.SetItemsProcessed(state.iterations());
}

BENCHMARK_CAPTURE(section, five plies, "examples/viola/laminate_top.toml");
BENCHMARK_CAPTURE(section, carved spruce, "examples/viola/spruce_top.toml");

} // namespace
} // namespace plate::benchmarks
