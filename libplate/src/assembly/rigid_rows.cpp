// SPDX-License-Identifier: MPL-2.0
#include "rigid_rows.h"

#include <plate/assembly/dof_map.h>

#include <Eigen/SVD>

#include <algorithm>

namespace plate
{

RigidRows::RigidRows(int num_equations) : all_(num_equations, 6) {}

void RigidRows::reach(const Eigen::Vector3d& position)
{
  scale_ = std::max(scale_, position.norm());
}

void RigidRows::add(int equation, const Eigen::Matrix<double, 1, 6>& row)
{
  if (equation == DofMap::held)
    held_gram_ += row.transpose() * row;
  else
    all_.row(equation) = row;
}

Eigen::MatrixXd RigidRows::allowed() const
{
  if (held_gram_.isZero(0.0))
    return all_;
  // Combinations of the six motions that leave every held unknown at zero. Turns are scaled to shifts of like size.
  Eigen::Matrix<double, 6, 1> weight;
  weight << 1.0, 1.0, 1.0, 1.0 / scale_, 1.0 / scale_, 1.0 / scale_;
  const Eigen::Matrix<double, 6, 6> scaled = weight.asDiagonal() * held_gram_ * weight.asDiagonal();
  const Eigen::JacobiSVD<Eigen::Matrix<double, 6, 6>> svd(scaled, Eigen::ComputeFullV);
  const auto rank = (svd.singularValues().array() > 1e-10 * svd.singularValues()(0)).count();
  return all_ * weight.asDiagonal() * svd.matrixV().rightCols(6 - rank);
}

} // namespace plate
