// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/mesh/shell_mesh.h>

#include <Eigen/Core>

#include <string>
#include <vector>

namespace plate
{

/// How much a mode of a free plate is like each of the three shapes makers tap for, each 0...1.
///
/// Squared correlations of the displacement along the normal with patterns in u, v, the coordinates over half length
/// and half width: along the outline with u v (twist) and u^2 - v^2 (ends against sides), where M1 and M2 are seen;
/// over the area with the dome (1 - u^2)(1 - v^2) less its mean (ring): a bar holds the edge near its ends, the middle
/// still moves. Common practice names these shapes M1, M2 and M5; no source gives numbers for "how alike".
struct ShapeLikeness
{
  double twist = 0.0; ///< M1: crossed nodal lines
  double cross = 0.0; ///< M2: nodal lines form an X
  double ring = 0.0;  ///< M5: closed nodal line inside the edge, middle against edge
};

/// @param w  displacement along the normal at the nodes, any scale
[[nodiscard]] ShapeLikeness shape_likeness(const ShellMesh& mesh, const Eigen::Ref<const Eigen::VectorXd>& w);

/// Names of free-plate modes by shape: "M1", "M2", "M5" for the mode most like each, "" for the rest.
///
/// At least half alike for M1 and M2, a quarter for M5, which a bar spreads over several modes.
/// @param normal_shapes  (num_nodes, num_modes) displacement along the normal, modes ascending
[[nodiscard]] std::vector<std::string> name_modes(const ShellMesh& mesh, const Eigen::MatrixXd& normal_shapes);

} // namespace plate
