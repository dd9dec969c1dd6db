// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "shell_terms.h"

/// Energy of a point in terms of the fields themselves and their slopes there, whatever functions carry them.
namespace plate::shell_kinematics
{

/// Fields of a shell: displacement (3) and change of the director (3), in global axes.
inline constexpr int num_fields = 6;

/// Slopes of the fields along xi, then along eta, then their values.
inline constexpr int num_gradients = 3 * num_fields;

template <int rows>
using GradientRows = Eigen::Matrix<double, rows, num_gradients>;

[[nodiscard]] inline FieldPoint<num_unit_functions> unit_functions(const ShellPoint& p)
{
  FieldPoint<num_unit_functions> field;
  field.N << 0.0, 0.0, 0.0, 0.0, 1.0, 1.0;
  field.dN << p.to_frame.row(0), p.to_frame.row(0), p.to_frame.row(1), p.to_frame.row(1), Eigen::RowVector2d::Zero(),
      Eigen::RowVector2d::Zero();
  return field;
}

[[nodiscard]] inline Rotations<num_unit_functions> unit_rotations()
{
  Rotations<num_unit_functions> rotations = Rotations<num_unit_functions>::Zero();
  for (int k = 0; k < 3; ++k)
  {
    rotations.middleCols<2>(4 * k) << Eigen::Vector3d::UnitX(), Eigen::Vector3d::UnitY();
    rotations.col(4 * k + 2) = Eigen::Vector3d::UnitZ();
  }
  return rotations;
}

/// Rows on the unknowns of the unit functions as rows on the gradients.
template <int rows>
[[nodiscard]] GradientRows<rows> on_gradients(const Eigen::Matrix<double, rows, 5 * num_unit_functions>& B)
{
  GradientRows<rows> out;
  for (int k = 0; k < 3; ++k)
  {
    out.template middleCols<5>(num_fields * k) = B.template middleCols<5>(10 * k);
    out.col(num_fields * k + 5) = B.col(10 * k + 8);
  }
  return out;
}

/// Calls visit(area, rows on the gradients, stiffness on the rows) for each term of the strain energy at a point.
template <class Visit>
void visit_gradient_energy(const ShellPoint& p, const ShellMaterial& material, const TriangleParts& parts,
                           std::span<const PlacedPly> plies, const Visit& visit)
{
  visit_energy(p, unit_functions(p), unit_rotations(), material, parts, plies,
               [&](double area, const auto& B, const auto& C) { visit(area, on_gradients(B), C); });
}

/// As above for the kinetic energy.
template <class Visit>
void visit_gradient_inertia(const ShellPoint& p, const ShellMaterial& material, const TriangleParts& parts,
                            std::span<const PlacedPly> plies, const Visit& visit)
{
  visit_inertia(p, unit_functions(p), unit_rotations(), material, parts, plies,
                [&](double area, const auto& B, const auto& C) { visit(area, on_gradients(B), C); });
}

} // namespace plate::shell_kinematics
