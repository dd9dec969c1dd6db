// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "axis.h"

#include <plate/meshes/sweep_picture.h>

#include <Eigen/Core>

namespace plate
{

/// Where things stand in the picture of a sweep, picture units.
struct SweepLayout
{
  Eigen::Vector2d page;    ///< size
  Eigen::Vector2d picture; ///< size of a mode picture
  double leader = 26.0;    ///< between the end of a curve and its picture
  double frame_left = 0.0;
  double frame_right = 0.0;
  Axis key;
  Axis frequency;      ///< [Hz]
  Axis mass;           ///< [g]; without masses not to be used
  double bottom = 0.0; ///< of the lowest panel
};

/// Room for one mode picture per track decides the height.
/// @param aspect  width over height of a plate
[[nodiscard]] SweepLayout sweep_layout(const SweepCurves& sweep, double aspect);

} // namespace plate
