// SPDX-License-Identifier: MPL-2.0
#include "shell_terms.h"

#include <Eigen/Geometry>

namespace plate::shell_kinematics
{

namespace
{

using Matrix36d = Eigen::Matrix<double, 3, 6>;

/// Rows (11, 22, 12) of sym(v_a . f,b) on the gradients (f,1; f,2) of a vector f.
Matrix36d symmetric_products(const Matrix32d& v)
{
  Matrix36d rows;
  rows << v.col(0).transpose(), Eigen::RowVector3d::Zero(), //
      Eigen::RowVector3d::Zero(), v.col(1).transpose(),     //
      v.col(1).transpose(), v.col(0).transpose();
  return rows;
}

/// Voigt matrix of E -> b E + E b^T.
Eigen::Matrix3d shift_once(const Eigen::Matrix2d& b)
{
  Eigen::Matrix3d L;
  L << 2.0 * b(0, 0), 0.0, b(0, 1), 0.0, 2.0 * b(1, 1), b(1, 0), 2.0 * b(1, 0), 2.0 * b(0, 1), b(0, 0) + b(1, 1);
  return L;
}

/// Voigt matrix of E -> b E b^T.
Eigen::Matrix3d shift_both(const Eigen::Matrix2d& b)
{
  Eigen::Matrix3d K;
  K << b(0, 0) * b(0, 0), b(0, 1) * b(0, 1), b(0, 0) * b(0, 1), //
      b(1, 0) * b(1, 0), b(1, 1) * b(1, 1), b(1, 0) * b(1, 1),  //
      2.0 * b(0, 0) * b(1, 0), 2.0 * b(0, 1) * b(1, 1), b(0, 0) * b(1, 1) + b(0, 1) * b(1, 0);
  return K;
}

} // namespace

FrameGradientRows<num_strains> strain_rows(const ShellPoint& p)
{
  const Matrix32d e = p.frame.leftCols<2>();
  const Matrix36d tangents = symmetric_products(e);
  const Matrix36d slopes = symmetric_products(p.director_slope);
  const Eigen::Matrix3d L = shift_once(p.b);
  const Matrix36d linear = slopes - L * tangents;
  FrameGradientRows<num_strains> rows = FrameGradientRows<num_strains>::Zero();
  rows.block<3, 6>(0, 0) = tangents;
  rows.block<3, 6>(3, 0) = linear;
  rows.block<3, 6>(3, 6) = tangents;
  rows.block<3, 6>(6, 0) = -L * linear - shift_both(p.b) * tangents;
  rows.block<3, 6>(6, 6) = linear;
  rows.block<1, 3>(9, 0) = p.director.transpose();
  rows.block<1, 3>(10, 3) = p.director.transpose();
  rows.block<2, 3>(9, 12) = e.transpose();
  return rows;
}

FrameGradientRows<1> twist_row(const ShellPoint& p, const BarPoint& bar)
{
  const Eigen::Vector2d along(bar.c, bar.s);
  const Eigen::Vector2d square(-bar.s, bar.c);
  const Eigen::Vector3d across = p.frame.leftCols<2>() * square;
  const Eigen::Vector2d curvature = p.b.transpose() * along; // how the director tilts on a step along the bar
  const Eigen::Vector3d normal = p.frame.col(2);
  const double stretch =
      normal.dot(p.director_slope * along); // zero for exact normals; kept so that rigid motion is free
  FrameGradientRows<1> row = FrameGradientRows<1>::Zero();
  for (int k = 0; k < 2; ++k)
  {
    row.segment<3>(3 * k) = (-curvature(k) * across + stretch * square(k) * normal).transpose();
    row.segment<3>(6 + 3 * k) = along(k) * across.transpose();
  }
  return row;
}

std::array<double, 3> inertia(const ShellPoint& p, const ShellMaterial& material, const TriangleParts& parts,
                              std::span<const PlacedPly> plies)
{
  SectionMass moments = section_mass(plies);
  if (parts.bar != nullptr)
  {
    const BarPoint point = bar_point(*parts.bar, p, plies, material.axes);
    for (std::size_t k = 0; k < moments.size(); ++k)
      moments[k] += point.section.mass[k];
  }
  const SectionMass m = with_volume(moments, volume_ratio(p));
  return {m[0], m[1], m[2]};
}

} // namespace plate::shell_kinematics
