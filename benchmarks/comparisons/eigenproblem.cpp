// SPDX-License-Identifier: MPL-2.0
#include "eigenproblem.h"

#include <Eigen/Cholesky>

#include <algorithm>
#include <numeric>
#include <utility>

namespace plate::benchmarks
{

Eigenproblem make_eigenproblem(SparseMatrix K, SparseMatrix M, Eigen::MatrixXd rigid,
                               std::vector<std::vector<int>> groups, double shift)
{
  Eigenproblem problem;
  problem.K_full = SparseMatrix(K.selfadjointView<Eigen::Lower>());
  problem.M_full = SparseMatrix(M.selfadjointView<Eigen::Lower>());
  for (int pass = 0; pass < 2 && rigid.cols() > 0; ++pass) // the second pass repairs the rounding of the first
  {
    const Eigen::MatrixXd L = (rigid.transpose() * (problem.M_full * rigid)).eval().llt().matrixL();
    rigid = L.triangularView<Eigen::Lower>().solve(rigid.transpose()).transpose().eval();
  }
  problem.rigid_mass = problem.M_full * rigid;
  problem.rigid = std::move(rigid);
  problem.K = std::move(K);
  problem.M = std::move(M);
  problem.groups = std::move(groups);
  problem.shift = shift;
  return problem;
}

SparseCholesky factorise(const Eigenproblem& problem)
{
  return {problem.K - problem.shift * problem.M, problem.groups};
}

double largest_residual(const Eigenproblem& problem, const EigenPairs& pairs)
{
  double largest = 0.0;
  for (Eigen::Index mode = 0; mode < pairs.values.size(); ++mode)
  {
    const Eigen::VectorXd inertia = pairs.values(mode) * (problem.M_full * pairs.vectors.col(mode));
    const Eigen::VectorXd elastic = problem.K_full * pairs.vectors.col(mode);
    largest = std::max(largest, (elastic - inertia).norm() / inertia.norm());
  }
  return largest;
}

EigenPairs sorted_elastic(const EigenPairs& pairs, int num_modes)
{
  std::vector<Eigen::Index> order(static_cast<std::size_t>(pairs.values.size()));
  std::iota(order.begin(), order.end(), 0);
  std::sort(order.begin(), order.end(),
            [&](Eigen::Index a, Eigen::Index b) { return pairs.values(a) < pairs.values(b); });
  const std::vector<Eigen::Index> elastic(order.end() - num_modes, order.end());
  return {
      .values = pairs.values(elastic), .vectors = pairs.vectors(Eigen::all, elastic), .num_solves = pairs.num_solves};
}

} // namespace plate::benchmarks
