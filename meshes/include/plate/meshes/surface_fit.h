// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/fit_report.h>

#include <Eigen/Core>

#include <span>

namespace plate
{

/// A measured value at a place of the planform: the height of an arch, or a thickness.
struct SurfacePoint
{
  Eigen::Vector2d place; ///< [m]
  double value;          ///< [m]
};

/// A smooth function over a box of the planform: cubic B-splines in x times those in y on equal intervals.
struct SmoothSurface
{
  Eigen::Vector2d low;          ///< corner of the box [m]
  Eigen::Vector2d high;         ///< opposite corner [m]
  Eigen::MatrixXd coefficients; ///< (intervals along x + 3, intervals along y + 3) [m]
};

/// Value of a surface with its slopes.
struct SurfaceValue
{
  double value;   ///< [m]
  double slope_x; ///< [-]
  double slope_y; ///< [-]
};

/// Value and exact slopes, continuous to the second derivative inside the box; beyond it the surface runs on straight.
[[nodiscard]] SurfaceValue evaluate(const SmoothSurface& surface, const Eigen::Vector2d& point);

/// A fitted surface and how well it fits.
struct SurfaceFit
{
  SmoothSurface surface;
  FitReport report;
  double cross_validated; ///< estimate of the rms by which it would miss another point measured with the same noise [m]
};

/// Smooth surface through scattered or gridded points that carry noise.
///
/// Least squares with the bending energy of a thin plate as penalty; its weight by generalised cross-validation, so
/// that the smoothing follows the noise. Points that lie further off than five standard deviations (estimated from the
/// median) and `least_outlier` are left out and reported. Several points at one place count as
/// noise.
///
/// @param points  10 to 200 000
/// @param region  closed polygon in which values are needed; where it has no points the surface runs on smoothly
/// @param least_outlier  what a fit cannot follow is no outlier [m]; 0: a hundredth of the range of the values
/// @throws InvalidInput if points are too few, too many, not finite or in one line, if much of the region is far from
///         every point, or if more than a fifth of the points are outliers
/// @source [Wahba1990] ch. 2 and 4; pinned by tests/unit/meshes/surface_fit_test.cpp
[[nodiscard]] SurfaceFit fit_surface(std::span<const SurfacePoint> points, std::span<const Eigen::Vector2d> region,
                                     double least_outlier = 0.0);

} // namespace plate
