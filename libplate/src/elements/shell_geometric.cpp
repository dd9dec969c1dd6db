// SPDX-License-Identifier: MPL-2.0
#include <plate/elements/shell_geometric.h>

#include "shell_terms.h"

#include <type_traits>

namespace plate
{

namespace
{

using namespace shell_kinematics;
using Displacement = Eigen::Matrix<double, num_dofs, 1>;

/// Membrane forces (11, 22, 12) in the frame of a point [N/m].
Eigen::Vector3d membrane_forces(const ShellPoint& p, const Rotations<num_nodes>& rotations,
                                const ShellMaterial& material, const TriangleParts& parts,
                                std::span<const PlacedPly> plies, const Displacement& u)
{
  const Eigen::Matrix<double, num_frame_gradients, 1> gradients = frame_gradients(cubic_field(p), rotations) * u;
  Eigen::Vector3d forces = Eigen::Vector3d::Zero();
  visit_energy(p, material, parts, plies,
               [&](double, const auto& rows, const auto& C)
               {
                 // The twist of a bar, a term of one row, makes no force in the surface.
                 if constexpr (std::decay_t<decltype(rows)>::RowsAtCompileTime == num_strains)
                   forces = C.template topRows<3>() * (rows * gradients);
               });
  return forces;
}

} // namespace

void geometric_stiffness(const ShellTriangleNodes& nodes, const ShellMaterial& material, const TriangleParts& parts,
                         const Displacement& u, ShellTriangle::Matrix& KG)
{
  KG.setZero();
  const Rotations<num_nodes> rotations = node_rotations(nodes, material.axes);
  std::vector<PlacedPly> plies;
  Eigen::Matrix<double, num_nodes, num_nodes> slopes = Eigen::Matrix<double, num_nodes, num_nodes>::Zero();
  for (const ShapePoint& at : quadrature(parts.patch_edge))
  {
    const ShellPoint p = shell_point(nodes, at, material.axes);
    plies_at(p, material, parts, plies);
    const Eigen::Vector3d N = membrane_forces(p, rotations, material, parts, plies, u);
    Eigen::Matrix2d tensor;
    tensor << N(0), N(2), N(2), N(1);
    slopes.noalias() += p.dN * (p.area * tensor) * p.dN.transpose();
  }
  for (int j = 0; j < num_nodes; ++j)
    for (int i = 0; i < num_nodes; ++i)
      KG.block<3, 3>(5 * i, 5 * j).diagonal().setConstant(slopes(i, j));
}

} // namespace plate
