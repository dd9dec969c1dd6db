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

System clamped_plate(int cells_x = 4, int cells_y = 3)
{
  Model model =
      test::plate_model(test::rectangle(0.2, 0.1, cells_x, cells_y, 3e-3), test::solid(test::reference_spruce(), 3e-3));
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

TEST_CASE("the halves of a solve make the whole, for one column as for several")
{
  const System system = clamped_plate();
  const SparseCholesky factor(system.K, unknowns_by_node(system.dofs));
  const Eigen::Index n = system.dofs.num_equations;
  Eigen::MatrixXd b(n, 3);
  for (Eigen::Index i = 0; i < b.size(); ++i)
    b.data()[i] = std::sin(0.3 * static_cast<double>(i));
  Eigen::MatrixXd y(n, 3);
  Eigen::MatrixXd x(n, 3);
  factor.solve_lower(b, y);
  factor.solve_upper(y, x);
  const Eigen::MatrixXd Ax = system.K.selfadjointView<Eigen::Lower>() * x;
  CHECK((Ax - b).norm() < 1e-8 * b.norm()); // 1e-16 times the condition of a thin plate
  // b^T A^-1 b = |L^-1 P b|^2
  for (Eigen::Index k = 0; k < 3; ++k)
    CHECK(y.col(k).squaredNorm() == doctest::Approx(b.col(k).dot(x.col(k))).epsilon(1e-8));
  Eigen::VectorXd y_alone(n);
  Eigen::VectorXd x_alone(n);
  factor.solve_lower(b.col(1), y_alone);
  factor.solve_upper(y_alone, x_alone);
  CHECK((y_alone - y.col(1)).norm() < 1e-10 * y.norm());
  CHECK((x_alone - x.col(1)).norm() < 1e-8 * x.norm());
}

TEST_CASE("another matrix of the same pattern takes the place of the first")
{
  const System system = clamped_plate();
  SparseCholesky factor(system.K, unknowns_by_node(system.dofs));
  const SparseMatrix other = system.K + 1e6 * system.M;
  factor.factorise(other);
  const Eigen::VectorXd expected = Eigen::VectorXd::LinSpaced(system.dofs.num_equations, -1.0, 2.0);
  Eigen::VectorXd x(expected.size());
  factor.solve(other.selfadjointView<Eigen::Lower>() * expected, x);
  CHECK((x - expected).norm() < 1e-8 * expected.norm());
  CHECK_THROWS_AS(factor.factorise(SparseMatrix(system.K - 1e9 * system.M)), NumericalFailure);
}

TEST_CASE("a matrix that is not positive definite is refused")
{
  const System system = clamped_plate();
  CHECK_THROWS_AS(SparseCholesky(SparseMatrix(system.K - 1e9 * system.M), unknowns_by_node(system.dofs)),
                  NumericalFailure);
}

#ifdef LIBPLATE_WITH_CHOLMOD

namespace
{

/// Large enough for several subtrees that are done one by one.
System large_plate()
{
  return clamped_plate(24, 12);
}

} // namespace

TEST_CASE("one pass over the factor does what two halves of a solve and a product between them do")
{
  for (const System& system : {clamped_plate(), large_plate()})
  {
    const SparseCholesky factor(system.K, unknowns_by_node(system.dofs));
    const auto product = factor.congruence(system.M);
    REQUIRE(product);
    const Eigen::Index n = system.dofs.num_equations;
    Eigen::VectorXd y(n);
    Eigen::VectorXd x(n);
    Eigen::VectorXd expected(n);
    Eigen::VectorXd found(n);
    for (int k = 0; k < 2; ++k)
    {
      for (Eigen::Index i = 0; i < n; ++i)
        y(i) = std::sin(0.7 * static_cast<double>(i) + k);
      factor.solve_upper(y, x);
      factor.solve_lower(system.M.selfadjointView<Eigen::Lower>() * x, expected);
      product({y.data(), static_cast<std::size_t>(n)}, {found.data(), static_cast<std::size_t>(n)});
      CHECK((found - expected).norm() < 1e-8 * expected.norm()); // 1e-16 times the condition of a thin plate
    }
  }
}

TEST_CASE("a matrix that couples what the elimination does not has no product in one pass")
{
  const System system = large_plate();
  const SparseCholesky factor(system.K, unknowns_by_node(system.dofs));
  SparseMatrix far = system.M;
  const Eigen::Index n = far.rows();
  for (Eigen::Index row = 0; row < n; row += n / 16)
    far.coeffRef(row, 0) = 1.0;
  far.makeCompressed();
  CHECK_FALSE(factor.congruence(far));
}

#endif
