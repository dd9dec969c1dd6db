// SPDX-License-Identifier: MPL-2.0
#include "sample_models.h"

#include <plate/core/error.h>
#include <plate/solvers/sparse_cholesky.h>

#include <doctest/doctest.h>

#include <cmath>
#include <utility>

using namespace plate;

namespace
{

System clamped_plate()
{
  Model model = test::plate_model(test::rectangle(0.2, 0.1, 4, 3, 3e-3), test::solid(test::reference_spruce(), 3e-3));
  model.supports = {{.group = "x-", .support = EdgeSupport::clamped}, {.group = "y+", .support = EdgeSupport::rest}};
  return assemble(model);
}

} // namespace

TEST_CASE("a factorisation solves what it was made of, again and again")
{
  const System system = clamped_plate();
  SparseCholesky factor(system.K, unknowns_by_node(system.dofs));
  const SparseCholesky moved = std::move(factor);
  for (int k = 0; k < 2; ++k)
  {
    Eigen::VectorXd expected(system.dofs.num_equations);
    for (Eigen::Index i = 0; i < expected.size(); ++i)
      expected(i) = std::sin(0.7 * static_cast<double>(i) + k);
    const Eigen::VectorXd b = system.K.selfadjointView<Eigen::Lower>() * expected;
    Eigen::VectorXd x(expected.size());
    moved.solve(b, x);
    CHECK((x - expected).norm() < 1e-8 * expected.norm()); // 1e-16 times the condition of a thin plate
  }
}

TEST_CASE("a matrix that is not positive definite is refused")
{
  const System system = clamped_plate();
  CHECK_THROWS_AS(SparseCholesky(SparseMatrix(system.K - 1e9 * system.M), unknowns_by_node(system.dofs)),
                  NumericalFailure);
}
