// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/mesh/shell_mesh.h>

#include <Eigen/Core>

#include <vector>

namespace plate
{

/// A shape known at some places of a plate.
struct MeasuredShape
{
  std::vector<Eigen::Vector2d> places; ///< in the planform [m]
  Eigen::VectorXd displacement;        ///< along the outward normal, (places), any scale
};

/// How alike a measured shape is to each mode of a plate.
struct MeasuredLikeness
{
  Eigen::RowVectorXd assurance; ///< modal assurance criterion over the places on the plate, each of one weight, (modes)
  int num_places;               ///< that lie on the plate; the others are left out
};

/// @param normal_shapes  displacement along the normal at the nodes, (num_nodes, modes)
/// @source [Allemang2003] eq. 4
[[nodiscard]] MeasuredLikeness measured_likeness(const ShellMesh& mesh, const Eigen::MatrixXd& normal_shapes,
                                                 const MeasuredShape& shape);

} // namespace plate
