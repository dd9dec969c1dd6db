// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>

namespace plate
{

/// Shape functions of the ten-node Lagrange triangle on (0,0), (1,0), (0,1).
///
/// Node order as in ShellMesh: corners, two nodes on edges 0-1, 1-2, 2-0 at thirds, centre.
/// @source [Zienkiewicz2005] sec. 4.7; pinned by tests/unit/elements/cubic_triangle_test.cpp
struct CubicTriangle
{
  static constexpr int num_nodes = 10;
  using Vector = Eigen::Matrix<double, num_nodes, 1>;
  using Gradient = Eigen::Matrix<double, num_nodes, 2>;

  [[nodiscard]] static Vector shape(double xi, double eta);
  [[nodiscard]] static Gradient gradient(double xi, double eta); ///< columns: derivatives along xi and eta

  /// Natural coordinates of the nodes, (10, 2).
  [[nodiscard]] static Gradient node_coordinates();
};

} // namespace plate
