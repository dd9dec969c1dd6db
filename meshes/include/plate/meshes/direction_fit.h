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

/// Directions over the planform that keep within a limited angle of their mean.
struct DirectionField
{
  Angle mean;              ///< from x
  SmoothSurface deviation; ///< from the mean [rad]
};

/// Direction at a point, from x.
[[nodiscard]] Angle direction_at(const DirectionField& field, const Eigen::Vector2d& point);

/// A fitted field and how well it fits: residuals are angles [rad].
struct DirectionFit
{
  DirectionField field;
  FitReport report;
};

/// Smooth directions through measured ones, by fit_surface() of their deviation from the mean direction.
///
/// @throws InvalidInput as fit_surface(), or if a direction lies more than 60 degrees off the mean: no ply is draped like
///   that, and beyond 90 degrees a direction and its opposite could not be told apart
[[nodiscard]] DirectionFit fit_directions(std::span<const MeasuredDirection> points,
                                          std::span<const Eigen::Vector2d> region);

} // namespace plate
