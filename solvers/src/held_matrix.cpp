// SPDX-License-Identifier: MPL-2.0
#include "held_matrix.h"

#include <vector>

namespace plate
{

namespace
{

/// Unknowns that take all rigid motions from a plate: rows of a well-conditioned square part, by complete pivoting.
std::vector<int> unknowns_to_hold(const Eigen::MatrixXd& rigid)
{
  const Eigen::VectorXd scale = rigid.colwise().norm().cwiseInverse();
  Eigen::MatrixXd rest = rigid * scale.asDiagonal();
  std::vector<int> rows;
  for (Eigen::Index k = 0; k < rigid.cols(); ++k)
  {
    Eigen::Index row = 0;
    Eigen::Index column = 0;
    rest.cwiseAbs().maxCoeff(&row, &column);
    rows.push_back(static_cast<int>(row));
    const Eigen::RowVectorXd pivot = rest.row(row) / rest(row, column);
    const Eigen::VectorXd eliminated = rest.col(column);
    rest -= eliminated * pivot;
  }
  return rows;
}

} // namespace

SparseMatrix held_matrix(const System& system)
{
  SparseMatrix K = system.K;
  for (const int row : unknowns_to_hold(system.rigid_motions))
    K.coeffRef(row, row) *= 2.0;
  return K;
}

} // namespace plate
