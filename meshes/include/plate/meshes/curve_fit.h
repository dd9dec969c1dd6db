// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/curve.h>
#include <plate/meshes/fit_report.h>

#include <Eigen/Core>

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace plate
{

/// A fitted closed curve and how well it fits.
struct CurveFit
{
  CurveLoop loop; ///< counter-clockwise, of quintic pieces that join with the same curvature but at corners
  FitReport report;
};

/// Smooth closed curve with sharp corners through points measured along it that carry noise.
///
/// Between corners quintic splines with the square of the third derivative as penalty, its weight by generalised
/// cross-validation. Corners are points of the list; unless given they are found where the path turns by more than 30
/// degrees within a few points and runs on more calmly to at least one side, or by more than 65 degrees at once: a
/// square of four points stays one, a circle of twelve becomes round. Points further off than five standard deviations
/// (estimated from the median) and a thousandth of the curve's size are left out and reported.
///
/// @param points   3 to 200 000 in order along the curve, either way round; the first may be repeated as the last
/// @param corners  indices of the points at corners; nothing: to be found
/// @throws InvalidInput if points are too few, too many, not finite, in one line or not in order, or if more than a
/// fifth
///         of them are outliers
/// @source [Wahba1990] ch. 4; pinned by tests/unit/meshes/curve_fit_test.cpp
[[nodiscard]] CurveFit fit_closed_curve(std::span<const Eigen::Vector2d> points,
                                        const std::optional<std::vector<std::size_t>>& corners = {});

} // namespace plate
