// SPDX-License-Identifier: MPL-2.0
#include "small_modes.h"

#include <plate/core/error.h>

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>

namespace plate::reduced
{

SmallModes small_modes(const Eigen::MatrixXd& stiffness, const Eigen::MatrixXd& mass, Eigen::Index num_rigid,
                       Eigen::Index num_modes)
{
  const Eigen::Index size = stiffness.rows() - num_rigid;
  // Rigid motions follow the elastic ones so that their momentum is zero: what is left of the mass is a Schur complement.
  Eigen::MatrixXd rigid_share = mass.topRightCorner(num_rigid, size);
  if (num_rigid > 0)
    mass.topLeftCorner(num_rigid, num_rigid).llt().solveInPlace(rigid_share);
  Eigen::MatrixXd inverse = mass.bottomRightCorner(size, size);
  inverse.noalias() -= mass.bottomLeftCorner(size, num_rigid) * rigid_share;

  const Eigen::LLT<Eigen::MatrixXd> llt(stiffness.bottomRightCorner(size, size));
  if (llt.info() != Eigen::Success)
    throw NumericalFailure("ReducedModel: the reduced stiffness is not positive definite; try a smaller box");
  llt.matrixL().solveInPlace(inverse);
  llt.matrixU().solveInPlace<Eigen::OnTheRight>(inverse);
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen(inverse); // of 1/eigenvalue, ascending

  SmallModes modes;
  const Eigen::VectorXd inverses = eigen.eigenvalues().tail(num_modes).reverse();
  Eigen::MatrixXd elastic = eigen.eigenvectors().rightCols(num_modes).rowwise().reverse();
  llt.matrixU().solveInPlace(elastic);
  elastic *= inverses.cwiseSqrt().cwiseInverse().asDiagonal();
  modes.eigenvalues = inverses.cwiseInverse();
  modes.vectors.resize(stiffness.rows(), num_modes);
  modes.vectors << -rigid_share * elastic, elastic;
  return modes;
}

} // namespace plate::reduced
