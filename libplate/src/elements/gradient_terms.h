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

/// Rows on the gradients along the frame of a point as rows on those along xi and eta.
template <int rows>
[[nodiscard]] GradientRows<rows> on_gradients(const ShellPoint& p, const FrameGradientRows<rows>& B)
{
  GradientRows<rows> out = GradientRows<rows>::Zero();
  for (int field = 0; field < 2; ++field)
    for (int k = 0; k < 2; ++k)
      out.template middleCols<3>(num_fields * k + 3 * field) =
          p.to_frame(k, 0) * B.template middleCols<3>(6 * field) +
          p.to_frame(k, 1) * B.template middleCols<3>(6 * field + 3);
  out.template rightCols<3>() = B.template middleCols<3>(12);
  return out;
}

/// Calls visit(area, rows on the gradients, stiffness on the rows) for each term of the strain energy at a point.
template <class Visit>
void visit_gradient_energy(const ShellPoint& p, const ShellMaterial& material, const TriangleParts& parts,
                           std::span<const PlacedPly> plies, const Visit& visit)
{
  visit_energy(p, material, parts, plies,
               [&](double area, const auto& B, const auto& C) { visit(area, on_gradients(p, B), C); });
}

/// As above for the kinetic energy.
template <class Visit>
void visit_gradient_inertia(const ShellPoint& p, const ShellMaterial& material, const TriangleParts& parts,
                            std::span<const PlacedPly> plies, const Visit& visit)
{
  const std::array<double, 3> m = inertia(p, material, parts, plies);
  GradientRows<num_fields> rows = GradientRows<num_fields>::Zero();
  rows.template rightCols<num_fields>().setIdentity();
  Eigen::Matrix<double, num_fields, num_fields> weights = Eigen::Matrix<double, num_fields, num_fields>::Zero();
  weights.topLeftCorner<3, 3>().diagonal().setConstant(m[0]);
  weights.topRightCorner<3, 3>().diagonal().setConstant(m[1]);
  weights.bottomLeftCorner<3, 3>().diagonal().setConstant(m[1]);
  weights.bottomRightCorner<3, 3>().diagonal().setConstant(m[2]);
  visit(p.area, rows, weights);
}

} // namespace plate::shell_kinematics
