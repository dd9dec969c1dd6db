// SPDX-License-Identifier: MPL-2.0
// One product with the mass matrix as it is stored.
#include "support/plates.h"

#include <benchmark/benchmark.h>

namespace plate::benchmarks
{
namespace
{

void mass_product(benchmark::State& state, Size size)
{
  const SparseMatrix& M = viola(size).system.M;
  const Eigen::VectorXd x = Eigen::VectorXd::Ones(M.rows());
  Eigen::VectorXd y(M.rows());
  for (auto _ : state)
  {
    y.noalias() = M.selfadjointView<Eigen::Lower>() * x;
    benchmark::DoNotOptimize(y.data());
  }
}

BENCHMARK_CAPTURE(mass_product, viola 53k, Size::demo)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(mass_product, viola 130k, Size::fine)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace plate::benchmarks
