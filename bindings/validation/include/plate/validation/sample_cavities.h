// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/air/cavity_mesh.h>
#include <plate/materials/air.h>

#include <functional>

namespace plate::validation
{

/// Air of the reference cavities.
inline constexpr Air plain_air = {.density = 1.204, .sound_speed = 343.2};

/// Cavity between z = 0 and a height over x and y [m].
[[nodiscard]] CavityMesh cavity_over(ShellMesh planform, const std::function<double(double x, double y)>& height);

} // namespace plate::validation
