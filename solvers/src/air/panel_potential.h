// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "panel_mesh.h"

#include <vector>

namespace plate
{

/// One flat panel with what the integrals over it need.
struct Panel
{
  std::array<Eigen::Vector3d, 3> corner; ///< [m]
  Eigen::Vector3d centre;                ///< [m]
  Eigen::Vector3d normal;                ///< unit [-]
  double area;                           ///< [m2]
  double radius;                         ///< of the ball about its centre that holds it [m]
};

[[nodiscard]] std::vector<Panel> panels_with_areas(const PanelMesh& mesh);

/// Integral of 1/r over a panel, r the distance from a point [m].
/// @source [Wilton1984]
[[nodiscard]] double inverse_distance(const Panel& panel, const Eigen::Vector3d& point);

/// Integral of 1/r over two panels, r the distance of a point of one from a point of the other [m3].
///
/// Both the same: in closed form; close to each other: closed form over one, 12 points over the other; else three
/// points on each, or their centres alone if they are small against the distance (1e-3 of the integral at most).
/// @source same panel: [Arcioni1997]; pinned by tests/unit/solvers/air_panels_test.cpp
[[nodiscard]] double inverse_distance(const Panel& a, const Panel& b);

} // namespace plate
