// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/inner_shape.h>
#include <plate/meshes/outline.h>
#include <plate/meshes/surface_fit.h>

#include <variant>

namespace plate
{

/// A flat plate.
struct FlatArching
{
};

/// Curtate-cycloid arches that rise from a channel inside the edge; the rim and the corners stay flat.
///
/// Across the body at each station y = b/pi a + h/2 sin(a), z = h/2 (1 + cos(a)), a from 0 (crown) to pi, with the half
/// width b(x) of the arched region and the height h(x) of the long arch. The mid-surface itself does not dip below the
/// rim: the hollow a maker sees in the channel comes from the edge being thicker than the channel.
struct CycloidArching
{
  double height; ///< rise of the mid-surface from rim to crown [m]
};

/// z = H (1 - (2x/L)^2) (1 - (2y/W)^2), L and W length and greatest width of the outline.
struct BiparabolicArching
{
  double height; ///< H [m]
};

/// z = H (1 - (2x/L)^2 - (2y/W)^2), L and W length and greatest width of the outline.
struct EllipticArching
{
  double height; ///< H [m]
};

/// A measured arch: a cycloid arch, which may be none, with a smooth surface on it.
struct SurfaceArching
{
  double cycloid_height;   ///< of the cycloid arch; 0 for none [m]
  SmoothSurface deviation; ///< height of the mid-surface over that arch [m]
};

/// Height of the mid-surface over the rim.
using Arching = std::variant<FlatArching, CycloidArching, BiparabolicArching, EllipticArching, SurfaceArching>;

/// Height with its slopes at a point of the planform.
struct Height
{
  double z;    ///< [m]
  double z_x;  ///< slope along x [-]
  double z_y;  ///< slope along y [-]

  /// Outward unit normal of the surface [-].
  [[nodiscard]] Eigen::Vector3d normal() const { return Eigen::Vector3d(-z_x, -z_y, 1.0).normalized(); }
};

/// Greatest height of a cycloid arch over an outline: the cross arch at the narrowest place is then 48 degrees steep [m].
///
/// @throws InvalidInput if the outline is somewhere too narrow for any
[[nodiscard]] double greatest_cycloid_height(const Outline& outline);

/// The mid-surface z(x, y) of one plate, continuous to the second derivative inside the outline.
class ArchSurface
{
public:
  /// @throws InvalidInput if the height is not finite, is negative, or is too great for cycloids over this outline
  ArchSurface(const Outline& outline, const Arching& arching);

  /// Height and slopes, exact derivatives of one another.
  [[nodiscard]] Height at(const Eigen::Vector2d& point) const;

private:
  Arching arching_;
  double length_; // [m]
  double width_;  // [m]
  InnerShape shape_;
};

} // namespace plate
