// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "curve_spline.h"

namespace plate
{

/// The splines as few quintic pieces that join with the same direction and curvature but at corners.
///
/// @param tolerance  greatest distance from the splines [m]
[[nodiscard]] CurveLoop pieces_of(const SplineCurve& curve, double tolerance);

} // namespace plate
