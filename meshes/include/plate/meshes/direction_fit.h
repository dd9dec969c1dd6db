// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/core/units.h>
#include <plate/meshes/surface_fit.h>

#include <span>
#include <vector>

namespace plate
{

/// A measured direction at a place of the planform, e.g. of a fibre; turned by 180 degrees it is the same.
struct MeasuredDirection
{
  Eigen::Vector2d place; ///< [m]
  Angle angle;           ///< from x, positive from x to y
};

/// Directions over the planform, smooth where they are and free of jumps where their angle passes 180 degrees.
struct DirectionField
{
  SmoothSurface cosine; ///< of twice the angle, up to a common factor [-]
  SmoothSurface sine;   ///< of twice the angle, up to the same factor [-]
};

/// cos and sin of twice the angle at a point, a unit vector [-].
[[nodiscard]] Eigen::Vector2d double_angle(const DirectionField& field, const Eigen::Vector2d& point);

/// A fitted field and how well it fits: residuals are angles [rad].
struct DirectionFit
{
  DirectionField field;
  FitReport report;
};

/// Smooth directions through measured ones, by fit_surface() of cos and sin of twice the angle.
///
/// @throws InvalidInput as fit_surface(), or if neighbouring directions contradict each other so much that none is left
[[nodiscard]] DirectionFit fit_directions(std::span<const MeasuredDirection> points,
                                          std::span<const Eigen::Vector2d> region);

} // namespace plate
