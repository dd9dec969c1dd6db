// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>

namespace plate
{

/// What quartic polynomials have beyond cubic ones on the triangle (0,0), (1,0), (0,1), hierarchically: all five
/// functions vanish at the ten nodes of CubicTriangle.
///
/// Order: one per edge 0-1, 1-2, 2-0, which vanishes on the other edges and is the same seen from either end; two that
/// vanish on all edges.
/// @source hierarchical shape functions: [Zienkiewicz2005] sec. 4.10; pinned by
///   tests/unit/elements/quartic_bubbles_test.cpp
struct QuarticBubbles
{
  static constexpr int num_functions = 5;
  using Vector = Eigen::Matrix<double, num_functions, 1>;
  using Gradient = Eigen::Matrix<double, num_functions, 2>;

  [[nodiscard]] static Vector value(double xi, double eta);
  [[nodiscard]] static Gradient gradient(double xi, double eta); ///< columns: derivatives along xi and eta

  /// Natural coordinates of five points at which values fix the coefficients: the middles of the edges and two inside.
  [[nodiscard]] static Gradient sample_points();

  /// Coefficients of the bubbles that take these values at the sample points.
  [[nodiscard]] static Vector from_samples(const Vector& values);
};

} // namespace plate
