// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/outline.h>

#include <Eigen/Core>

namespace plate
{

/// The part of a plate inside its flat rim: a smooth, corner-free shape given by its squared half width over x.
///
/// A smooth function that vanishes on the boundary of the shape; a distance to the outline would kink on the medial axis
/// and at the corners. For `bouts` and for any curve a polynomial fitted to the outline drawn in by the width of the rim, the
/// corners left out; a rectangle has a superellipse, an ellipse an ellipse.
class InnerShape
{
public:
  /// @throws InvalidInput as outline_loop()
  explicit InnerShape(const Outline& outline);

  /// Squared half width B(x), negative beyond the ends, with two derivatives.
  struct Width
  {
    double squared; ///< [m^2]
    double slope;   ///< dB/dx [m]
    double bend;    ///< d2B/dx2 [-]
  };
  [[nodiscard]] Width at(double x) const;

  [[nodiscard]] double half_length() const { return half_length_; } ///< the shape ends at x = +-half_length [m]
  [[nodiscard]] double rim() const { return rim_; }                 ///< width of the flat rim outside the shape [m]
  [[nodiscard]] double channel() const { return channel_; }         ///< distance of the channel from the edge [m]

private:
  double half_length_; // [m]
  double rim_;         // [m]
  double channel_;     // [m]
  Eigen::VectorXd chebyshev_; // B = (1 - s^2) * sum c_k T_k(s), s = x / half_length [m^2]
};

} // namespace plate
