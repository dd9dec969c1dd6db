// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>

#include <cstddef>
#include <vector>

namespace plate
{

/// How far one measured point lies from what was fitted through all of them.
struct FitResidual
{
  std::size_t point = 0;                           ///< its place in the list of points, from 0
  Eigen::Vector2d place = Eigen::Vector2d::Zero(); ///< in the planform [m]
  double residual = 0.0;                           ///< measured less fitted; of a curve the distance [m]
};

/// How well a smooth curve or surface fits the points it was made from.
struct FitReport
{
  std::size_t points = 0;            ///< points used, the outliers not among them
  double rms = 0.0;                  ///< root mean square of the residuals of the points used [m]
  FitResidual largest;               ///< of the points used
  std::vector<FitResidual> outliers; ///< points left out because they contradict the others, in the order of the list
};

} // namespace plate
