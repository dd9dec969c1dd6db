// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>

namespace plate
{

/// Collects what the six rigid motions do to each unknown, and finds those that the supports allow.
class RigidRows
{
public:
  explicit RigidRows(int num_equations);

  /// Takes note of how far from the origin the nodes lie [m].
  void reach(const Eigen::Vector3d& position);

  /// @param equation  of the unknown, or DofMap::held
  void add(int equation, const Eigen::Matrix<double, 1, 6>& row);

  /// Motions that leave every held unknown at zero, (num_equations, 0...6).
  [[nodiscard]] Eigen::MatrixXd allowed() const;

private:
  Eigen::MatrixXd all_;
  Eigen::Matrix<double, 6, 6> held_gram_ = Eigen::Matrix<double, 6, 6>::Zero();
  double scale_ = 0.0; // [m]
};

} // namespace plate
