// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/mesh/shell_mesh.h>

#include <Eigen/Core>

#include <string>
#include <vector>

namespace plate
{

/// How much a mode moves the edge of a free plate like each of the three shapes makers tap for, each 0...1.
///
/// Squared correlation along the outline of the displacement along the normal with a pattern: the product of the
/// coordinates (twist), the difference of their squares (ends against sides), a constant (whole edge against the middle).
/// Common practice names these shapes M1, M2 and M5; no source gives numbers for "how alike".
struct EdgeLikeness
{
  double twist = 0.0; ///< M1: crossed nodal lines
  double cross = 0.0; ///< M2: nodal lines form an X
  double ring = 0.0;  ///< M5: closed nodal line inside the edge, middle against edge
};

/// @param w  displacement along the normal at the nodes, any scale
[[nodiscard]] EdgeLikeness edge_likeness(const ShellMesh& mesh, const Eigen::Ref<const Eigen::VectorXd>& w);

/// Names of free-plate modes by shape: "M1", "M2", "M5" for the mode most like each, "" for the rest.
///
/// At least half alike for M1 and M2, 0.15 for M5, which a bar spreads over several modes.
/// @param normal_shapes  (num_nodes, num_modes) displacement along the normal, modes ascending
[[nodiscard]] std::vector<std::string> name_modes(const ShellMesh& mesh, const Eigen::MatrixXd& normal_shapes);

} // namespace plate
