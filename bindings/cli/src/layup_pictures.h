// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "laminate_result.h"

#include <plate/meshes/polar_picture.h>

#include <string>
#include <vector>

namespace plate
{

/// A layup as one curve among others.
struct LayupCurve
{
  std::string label;                         ///< in the legend
  const std::vector<StripStiffness>& strips; ///< LaminateResult::polar
};

/// Stretching and bending stiffness of layups over direction.
[[nodiscard]] PolarPicture polar_picture(const std::string& title, const std::vector<LayupCurve>& layups);

} // namespace plate
