// SPDX-License-Identifier: MPL-2.0
#include "snapshot_vectors.h"

#include "../sparse_combination.h"
#include "cross_products.h"

#include <Eigen/Eigenvalues>

namespace plate::reduced
{

EnergyMatrix energy_matrix(const System& system, double shift)
{
  const SparseMatrix lower = combination(system.K, shift, system.M);
  const SparseMatrix whole = lower.selfadjointView<Eigen::Lower>();
  return whole;
}

Vectors new_vectors(const Vectors& basis, const EnergyMatrix& energy, const Eigen::MatrixXd& shapes, double drop)
{
  Vectors rest = shapes;
  const Eigen::VectorXd norms = rest.cwiseProduct(energy * rest).colwise().sum().cwiseSqrt();
  rest = rest * norms.cwiseInverse().asDiagonal();
  for (int pass = 0; pass < 2; ++pass) // the second pass repairs the rounding of the first
  {
    const Vectors product = energy * rest;
    rest -= basis * cross_products(basis, product);
  }
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen(rest.transpose() * (energy * rest));
  const auto kept = (eigen.eigenvalues().array() > drop * drop).count();
  const Eigen::VectorXd scale = eigen.eigenvalues().tail(kept).cwiseSqrt().cwiseInverse();
  return rest * eigen.eigenvectors().rightCols(kept) * scale.asDiagonal();
}

void extend_projection(const Vectors& basis, const Vectors& product, Eigen::MatrixXd& projected)
{
  const Eigen::Index added = product.cols();
  const Eigen::Index old_size = basis.cols() - added;
  const Eigen::MatrixXd columns = cross_products(basis, product);
  projected.conservativeResize(basis.cols(), basis.cols());
  projected.rightCols(added) = columns;
  projected.bottomLeftCorner(added, old_size) = columns.topRows(old_size).transpose();
}

} // namespace plate::reduced
