// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "panel_mesh.h"

namespace plate
{

/// Mass per density of air between velocity fields, (n, n).
///
/// @param loads  integral of the velocity along the normal times the hat function of each vertex, (vertices, n)
/// @return loads^T W^-1 loads, with W of the hat functions that vanish along edges [as loads^2 / m]
/// @throws as air_mass()
[[nodiscard]] Eigen::MatrixXd moved_volume(const PanelMesh& panels, const Eigen::MatrixXd& loads);

} // namespace plate
