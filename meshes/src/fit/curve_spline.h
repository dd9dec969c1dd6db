// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "point_path.h"
#include "spline_basis.h"

#include <plate/meshes/curve.h>

#include <cstddef>
#include <vector>

namespace plate
{

/// One smooth run of a closed curve: from corner to corner, or all of it.
struct SplineRun
{
  SplineBasis basis;                 ///< over a parameter that is about the arc length [m]
  std::vector<Eigen::Index> numbers; ///< of each of its splines' coefficients in the curve
  std::vector<std::size_t> points;   ///< of the path, in order, corners at both ends included
  std::vector<double> parameters;    ///< of these points [m]
};

/// A closed curve of splines, its runs sharing the coefficients at corners.
struct SplineCurve
{
  std::vector<SplineRun> runs;
  Eigen::MatrixX2d coefficients; ///< [m]
  bool closed;                   ///< one run that goes on smoothly into itself
};

/// The splines for a path, one run if it has no corners; coefficients still zero.
///
/// @param corners  indices into the path, ascending
[[nodiscard]] SplineCurve make_spline_curve(const PointPath& path, const std::vector<std::size_t>& corners);

/// Fits the coefficients to the points in use and moves every point's parameter to the place on the curve nearest to
/// it, several times over.
void fit_spline_curve(SplineCurve& curve, const PointPath& path, const std::vector<char>& used);

/// Distances of the points of the path from the curve, positive to the left [m].
[[nodiscard]] std::vector<double> distances(const SplineCurve& curve, const PointPath& path);

/// Position and derivatives by the run's parameter.
[[nodiscard]] CurvePoint evaluate(const SplineCurve& curve, const SplineRun& run, double parameter);

/// Parameter of the place nearest to a point, from one close to it.
[[nodiscard]] double nearest_parameter(const SplineCurve& curve, const SplineRun& run, const Eigen::Vector2d& point,
                                       double parameter);

/// Greatest value of the run's parameter [m].
[[nodiscard]] double end_of(const SplineRun& run);

} // namespace plate
