// SPDX-License-Identifier: MPL-2.0
#include "sparse_combination.h"

#include <algorithm>

namespace plate
{

bool same_pattern(const SparseMatrix& a, const SparseMatrix& b)
{
  return a.rows() == b.rows() && a.nonZeros() == b.nonZeros() &&
         std::equal(a.outerIndexPtr(), a.outerIndexPtr() + a.outerSize() + 1, b.outerIndexPtr()) &&
         std::equal(a.innerIndexPtr(), a.innerIndexPtr() + a.nonZeros(), b.innerIndexPtr());
}

SparseMatrix combination(const SparseMatrix& A, double factor, const SparseMatrix& B)
{
  if (!same_pattern(A, B))
    return A + factor * B;
  SparseMatrix sum = A;
  Eigen::Map<Eigen::VectorXd>(sum.valuePtr(), sum.nonZeros()) +=
      factor * Eigen::Map<const Eigen::VectorXd>(B.valuePtr(), B.nonZeros());
  return sum;
}

} // namespace plate
