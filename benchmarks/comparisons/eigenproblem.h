// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/assemble.h>
#include <plate/solvers/sparse_cholesky.h>

#include <Eigen/Core>

namespace plate::benchmarks
{

/// A full symmetric matrix by rows: what other eigensolvers multiply with.
using FullMatrix = Eigen::SparseMatrix<double, Eigen::RowMajor>;

/// K x = lambda M x of a body with or without supports.
struct Eigenproblem
{
  SparseMatrix K;                       ///< lower triangle
  SparseMatrix M;                       ///< lower triangle
  FullMatrix K_full;                    ///< both triangles
  FullMatrix M_full;                    ///< both triangles
  Eigen::MatrixXd rigid;                ///< orthonormal in M, (n, 0...6)
  Eigen::MatrixXd rigid_mass;           ///< M times that
  std::vector<std::vector<int>> groups; ///< unknowns of each node
  double shift;                         ///< negative [1/s2]
};

/// @param rigid  rigid motions, not yet orthonormal
[[nodiscard]] Eigenproblem make_eigenproblem(SparseMatrix K, SparseMatrix M, Eigen::MatrixXd rigid,
                                             std::vector<std::vector<int>> groups, double shift);

/// K - shift M, factorised as libplate does it.
[[nodiscard]] SparseCholesky factorise(const Eigenproblem& problem);

/// How a solver is told to work.
struct EigenSettings
{
  int num_modes = 20;      ///< elastic modes
  double tolerance = 1e-9; ///< as the solver understands it
  int krylov_size = 46;    ///< greatest dimension of the Krylov space
  bool deflate = true;     ///< rigid motions are taken out beforehand; else they are found and left out
};

/// What it found.
struct EigenPairs
{
  Eigen::VectorXd values;  ///< of elastic modes, ascending [1/s2]
  Eigen::MatrixXd vectors; ///< (n, num_modes)
  int num_solves = 0;
};

/// The largest of |K x - lambda M x| / |lambda M x| over all modes: the same measure for every solver.
[[nodiscard]] double largest_residual(const Eigenproblem& problem, const EigenPairs& pairs);

/// The `num_modes` largest pairs without the rigid ones before them, put in ascending order.
[[nodiscard]] EigenPairs sorted_elastic(const EigenPairs& pairs, int num_modes);

} // namespace plate::benchmarks
