// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/dof_map.h>
#include <plate/assembly/model.h>

#include <Eigen/Core>

#include <vector>

namespace plate
{

/// Mode shapes as fields over the plate, comparable between meshes.
struct ModeShapes
{
  ShellMesh mesh;
  Eigen::VectorXd weight;       ///< what each of the triangle_points() of each triangle stands for [m3 or kg]
  Eigen::MatrixXd displacement; ///< (3 num_nodes, num_modes), x, y, z of node 0, then of node 1, ...
};

/// Fields of vectors of unknowns; a point stands for its volume: its mass, up to a factor, on a plate without patches.
[[nodiscard]] ModeShapes mode_shapes(const ShellMesh& mesh, const DofMap& dofs, const Eigen::MatrixXd& unknowns);

/// Fields of vectors of unknowns; a point stands for its mass, with that of patches and bars (not of stuck-on masses).
[[nodiscard]] ModeShapes mode_shapes(const Model& model, const DofMap& dofs, const Eigen::MatrixXd& unknowns);

/// Scalar fields over a mesh, such as pressures, as z of the displacements; a point stands for its volume.
///
/// @param mesh    its thickness is the height of the volume
/// @param values  at the nodes, (num_nodes, num_fields)
/// @throws InvalidInput if there is not a row for each node
[[nodiscard]] ModeShapes scalar_shapes(const ShellMesh& mesh, const Eigen::MatrixXd& values);

/// Products of the shapes of two plates, integrated over the mass of the first, the reference.
struct ShapeProducts
{
  Eigen::MatrixXd reference;   ///< of the reference's modes with each other, (n, n)
  Eigen::MatrixXd cross;       ///< of the reference's modes with those of the other plate, (n, m)
  Eigen::MatrixXd other;       ///< of the other plate's modes with each other, (m, m)
  double share_left_out = 0.0; ///< of the reference's mass, where the other plate has no place to compare with [-]
};

/// Takes both plates at the quadrature points of the reference: in the same place of the same triangle where both have
/// one mesh, perhaps moved; otherwise where the points come to lie when the planforms are stretched to one length and
/// width. Points that come to lie in a hole of the other plate or beside it are left out.
///
/// @throws InvalidInput if more than half of the mass is left out
[[nodiscard]] ShapeProducts shape_products(const ModeShapes& reference, const ModeShapes& other);

/// Products of the shapes of one plate with each other, integrated over its mass, (n, n).
[[nodiscard]] Eigen::MatrixXd shape_products(const ModeShapes& shapes);

/// Modal assurance criterion, (n, m), each 0...1; 0 with a shape that is zero at all points.
/// @source [Allemang2003] eq. 4 with weighting
[[nodiscard]] Eigen::MatrixXd modal_assurance(const ShapeProducts& products);

/// Modal assurance criterion between the modes of a, the reference, and those of b.
[[nodiscard]] Eigen::MatrixXd modal_assurance(const ModeShapes& a, const ModeShapes& b);

/// One-to-one assignment of rows to columns with the largest sum of scores.
///
/// @param score  (rows, columns), rows <= columns
/// @return for each row its column
/// @throws InvalidInput if there are more rows than columns
/// @source shortest augmenting paths, [Kuhn1955], [Jonker1987]; cost O(rows^2 columns)
[[nodiscard]] std::vector<int> best_assignment(const Eigen::MatrixXd& score);

} // namespace plate
