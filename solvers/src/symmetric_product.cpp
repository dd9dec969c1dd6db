// SPDX-License-Identifier: MPL-2.0
#include "symmetric_product.h"

#include <plate/core/wide_arithmetic.h>

#include <algorithm>

namespace plate
{

namespace
{

constexpr Eigen::Index block = 8; // columns taken at once

/// One row for each unknown, so that what an entry of the matrix needs lies together.
using Rows = Eigen::Matrix<double, Eigen::Dynamic, block, Eigen::RowMajor>;

LIBPLATE_INLINED void multiply(const SparseMatrix& lower, const double* x, double* y)
{
  for (Eigen::Index column = 0; column < lower.outerSize(); ++column)
  {
    const FourDoubles* own = four(x + block * column);
    FourDoubles sum[2] = {};
    for (SparseMatrix::InnerIterator entry(lower, column); entry; ++entry)
    {
      const double a = entry.value();
      const FourDoubles* other = four(x + block * entry.row());
      sum[0] += a * other[0];
      sum[1] += a * other[1];
      if (entry.row() == column)
        continue;
      FourDoubles* below = four(y + block * entry.row());
      below[0] += a * own[0];
      below[1] += a * own[1];
    }
    FourDoubles* out = four(y + block * column);
    out[0] += sum[0];
    out[1] += sum[1];
  }
}

LIBPLATE_WIDE void multiply_wide(const SparseMatrix& lower, const double* x, double* y)
{
  multiply(lower, x, y);
}

void multiply_usual(const SparseMatrix& lower, const double* x, double* y)
{
  multiply(lower, x, y);
}

} // namespace

Eigen::MatrixXd symmetric_product(const SparseMatrix& lower, const Eigen::Ref<const Eigen::MatrixXd>& X)
{
  Eigen::MatrixXd Y(X.rows(), X.cols());
  Rows x = Rows::Zero(X.rows(), block);
  Rows y(X.rows(), block);
  for (Eigen::Index from = 0; from < X.cols(); from += block)
  {
    const Eigen::Index size = std::min(block, X.cols() - from);
    x.leftCols(size) = X.middleCols(from, size);
    y.setZero();
    has_wide_arithmetic() ? multiply_wide(lower, x.data(), y.data()) : multiply_usual(lower, x.data(), y.data());
    Y.middleCols(from, size) = y.leftCols(size);
  }
  return Y;
}

} // namespace plate
