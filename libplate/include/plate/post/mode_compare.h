// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/dof_map.h>

#include <Eigen/Core>

#include <vector>

namespace plate
{

/// Mode shapes as fields over the plate, comparable between meshes.
struct ModeShapes
{
  std::vector<Eigen::Vector3d> points; ///< nodes [m]
  Eigen::VectorXd weight;              ///< volume each node stands for [m3]
  Eigen::MatrixXd displacement;        ///< (3 num_nodes, num_modes), x, y, z of node 0, then of node 1, ...
};

/// Fields of vectors of unknowns.
[[nodiscard]] ModeShapes mode_shapes(const ShellMesh& mesh, const DofMap& dofs, const Eigen::MatrixXd& unknowns);

/// Modal assurance criterion between two sets of shapes, weighted with the volume of the nodes of b.
///
/// Node by node where both have the same number of nodes (one mesh, perhaps moved); otherwise each node of b is paired
/// with the nearest one of a in coordinates scaled to the size of each plate.
/// @return (modes of a, modes of b), each 0...1
/// @source [Allemang2003] eq. 4 with weighting
[[nodiscard]] Eigen::MatrixXd modal_assurance(const ModeShapes& a, const ModeShapes& b);

/// One-to-one assignment of rows to columns with the largest sum of scores.
///
/// @param score  (rows, columns), rows <= columns
/// @return for each row its column
/// @throws InvalidInput if there are more rows than columns
/// @source shortest augmenting paths, [Kuhn1955], [Jonker1987]; cost O(rows^2 columns)
[[nodiscard]] std::vector<int> best_assignment(const Eigen::MatrixXd& score);

} // namespace plate
