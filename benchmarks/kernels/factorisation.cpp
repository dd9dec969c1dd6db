// SPDX-License-Identifier: MPL-2.0
// Factorisation of K - shift M, and solves with it for one and for several columns at once.
#include "support/plates.h"

#include <plate/solvers/sparse_cholesky.h>

#include <benchmark/benchmark.h>

#include <map>

namespace plate::benchmarks
{
namespace
{

const SparseCholesky& factor_of(Size size)
{
  static std::map<Size, SparseCholesky> made;
  const auto found = made.find(size);
  if (found != made.end())
    return found->second;
  const Plate& plate = viola(size);
  return made.emplace(size, SparseCholesky(plate.shifted, unknowns_by_node(plate.system.dofs))).first->second;
}

void factorisation(benchmark::State& state, Size size)
{
  const Plate& plate = viola(size);
  const auto groups = unknowns_by_node(plate.system.dofs);
  for (auto _ : state)
    benchmark::DoNotOptimize(SparseCholesky(plate.shifted, groups));
}

/// The numbers alone: the pattern has been seen before.
void factorisation_again(benchmark::State& state, Size size)
{
  const Plate& plate = viola(size);
  SparseCholesky factor(plate.shifted, unknowns_by_node(plate.system.dofs));
  for (auto _ : state)
    factor.factorise(plate.shifted);
}

void solve(benchmark::State& state, Size size)
{
  const SparseCholesky& factor = factor_of(size);
  const Eigen::MatrixXd b = Eigen::MatrixXd::Ones(viola(size).shifted.rows(), state.range(0));
  Eigen::MatrixXd x(b.rows(), b.cols());
  for (auto _ : state)
  {
    factor.solve(b, x);
    benchmark::DoNotOptimize(x.data());
  }
  state.SetItemsProcessed(state.iterations() * state.range(0));
}

constexpr auto ms = benchmark::kMillisecond;
BENCHMARK_CAPTURE(factorisation, viola 53k, Size::demo)->Unit(ms);
BENCHMARK_CAPTURE(factorisation, viola 130k, Size::fine)->Unit(ms);
BENCHMARK_CAPTURE(factorisation_again, viola 53k, Size::demo)->Unit(ms);
BENCHMARK_CAPTURE(factorisation_again, viola 130k, Size::fine)->Unit(ms);
BENCHMARK_CAPTURE(solve, viola 53k, Size::demo)->ArgName("columns")->Arg(1)->Arg(4)->Arg(8)->Unit(ms);
BENCHMARK_CAPTURE(solve, viola 130k, Size::fine)->ArgName("columns")->Arg(1)->Arg(4)->Arg(8)->Unit(ms);

} // namespace
} // namespace plate::benchmarks
