// SPDX-License-Identifier: MPL-2.0
#include "sparse_combination.h"
#include "symmetric_product.h"

#include <doctest/doctest.h>

#include <random>

using namespace plate;

namespace
{

/// Lower triangle with a diagonal and about a third of the entries below it.
SparseMatrix random_lower(int size, unsigned seed)
{
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> value(-1.0, 1.0);
  SparseMatrix lower(size, size);
  for (int column = 0; column < size; ++column)
    for (int row = column; row < size; ++row)
      if (row == column || value(random) > 0.3)
        lower.insert(row, column) = value(random);
  lower.makeCompressed();
  return lower;
}

Eigen::MatrixXd dense(const SparseMatrix& lower)
{
  return Eigen::MatrixXd(lower).selfadjointView<Eigen::Lower>();
}

} // namespace

TEST_CASE("products with any number of columns are those of the whole matrix")
{
  const int size = 37;
  const SparseMatrix lower = random_lower(size, 1);
  std::mt19937 random(2);
  std::uniform_real_distribution<double> value(-1.0, 1.0);
  for (const int columns : {0, 1, 7, 8, 9, 20})
  {
    CAPTURE(columns);
    const Eigen::MatrixXd X = Eigen::MatrixXd::NullaryExpr(size, columns, [&] { return value(random); });
    const Eigen::MatrixXd Y = symmetric_product(lower, X);
    REQUIRE(Y.cols() == columns);
    // Sums of 37 products below one: rounding stays below 37 eps.
    CHECK((Y - dense(lower) * X).cwiseAbs().sum() <= 37 * 37 * columns * 2.2e-16);
  }
}

TEST_CASE("matrices of one pattern and of two are summed alike")
{
  const SparseMatrix A = random_lower(29, 3);
  const SparseMatrix other = random_lower(29, 4);
  SparseMatrix same = A;
  same.coeffs() = same.coeffs().square() - 0.5;
  REQUIRE(same_pattern(A, same));
  REQUIRE_FALSE(same_pattern(A, other));
  for (const SparseMatrix& B : {same, other})
    CHECK((dense(combination(A, -1.5, B)) - (dense(A) - 1.5 * dense(B))).cwiseAbs().maxCoeff() < 1e-15);
}
