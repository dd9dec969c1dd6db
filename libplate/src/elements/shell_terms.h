// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "shell_section.h"

#include <plate/elements/quadrature.h>

/// Terms of strain and kinetic energy at a point, for any number of displacement functions.
namespace plate::shell_kinematics
{

/// Rate of twist of the bar: how its cross-section turns about it, free of rigid motion.
template <int n>
[[nodiscard]] Eigen::Matrix<double, 1, 5 * n> twist_row(const ShellPoint& p, const FieldPoint<n>& field,
                                                        const Rotations<n>& rotations, const BarPoint& bar)
{
  const Eigen::Vector2d along(bar.c, bar.s);
  const Eigen::Vector3d across = -bar.s * p.frame.col(0) + bar.c * p.frame.col(1);
  const Eigen::Vector2d curvature = p.b.transpose() * along; // how the director tilts on a step along the bar
  const Eigen::Vector3d normal = p.frame.col(2);
  const double stretch =
      normal.dot(p.director_slope * along); // zero for exact normals; kept so that rigid motion is free
  Eigen::Matrix<double, 1, 5 * n> row;
  for (int i = 0; i < n; ++i)
  {
    const Eigen::Vector2d g = field.dN.row(i).transpose();
    const double g_across = bar.c * g(1) - bar.s * g(0);
    row.template segment<3>(5 * i) = -g.dot(curvature) * across.transpose() + stretch * g_across * normal.transpose();
    row.template segment<2>(5 * i + 3) = g.dot(along) * across.transpose() * rotations.template middleCols<2>(2 * i);
  }
  return row;
}

/// Calls visit(area, rows, stiffness on the rows) for a point: the one description of the strain energy.
template <int n, class Visit>
void visit_energy(const ShellPoint& p, const FieldPoint<n>& field, const Rotations<n>& rotations,
                  const ShellMaterial& material, const TriangleParts& parts, std::span<const PlacedPly> plies,
                  const Visit& visit)
{
  const VolumeRatio ratio = volume_ratio(p);
  StrainMatrix C = plate_stiffness(section_stiffness(plies, p.frame, material.axes), ratio);
  if (parts.bar != nullptr)
  {
    const BarPoint point = bar_point(*parts.bar, p, plies, material.axes);
    C += bar_stiffness(point, ratio);
    if (parts.bar_torsion != nullptr)
    {
      const Eigen::Matrix<double, 1, 1> torsion(parts.bar_torsion->at(p.station) / parts.bar->width);
      visit(p.area, twist_row(p, field, rotations, point), torsion);
    }
  }
  StrainRows<n> B;
  covariant_strain_rows(p, field, rotations, B);
  const StrainMatrix T = physical_from_covariant(p.b);
  visit(p.area, B, StrainMatrix(T.transpose() * C * T));
}

/// Calls visit(area, rows, inertia on the rows) for a point: the one description of the kinetic energy. Rows are the
/// displacement of the mid-surface and the change of the director.
template <int n, class Visit>
void visit_inertia(const ShellPoint& p, const FieldPoint<n>& field, const Rotations<n>& rotations,
                   const ShellMaterial& material, const TriangleParts& parts, std::span<const PlacedPly> plies,
                   const Visit& visit)
{
  SectionMass moments = section_mass(plies);
  if (parts.bar != nullptr)
  {
    const BarPoint point = bar_point(*parts.bar, p, plies, material.axes);
    for (std::size_t k = 0; k < moments.size(); ++k)
      moments[k] += point.section.mass[k];
  }
  const SectionMass m = with_volume(moments, volume_ratio(p));
  Eigen::Matrix<double, 6, 5 * n> rows = Eigen::Matrix<double, 6, 5 * n>::Zero();
  for (int i = 0; i < n; ++i)
  {
    rows.template block<3, 3>(0, 5 * i).diagonal().setConstant(field.N(i));
    rows.template block<3, 2>(3, 5 * i + 3) = field.N(i) * rotations.template middleCols<2>(2 * i);
  }
  Eigen::Matrix<double, 6, 6> inertia = Eigen::Matrix<double, 6, 6>::Zero();
  inertia.topLeftCorner<3, 3>().diagonal().setConstant(m[0]);
  inertia.topRightCorner<3, 3>().diagonal().setConstant(m[1]);
  inertia.bottomLeftCorner<3, 3>().diagonal().setConstant(m[1]);
  inertia.bottomRightCorner<3, 3>().diagonal().setConstant(m[2]);
  visit(p.area, rows, inertia);
}

/// Adds up area B^T C B with symmetric C. The rows B of several points are gathered first, then multiplied at once:
/// their blocks stay in cache, and only half of the product is computed.
template <int n>
class ProductSum
{
public:
  using Matrix = Eigen::Matrix<double, 5 * n, 5 * n>;

  explicit ProductSum(Matrix& sum) : sum_(sum) { sum_.setZero(); }

  template <class Rows, class Weights>
  void add(double area, const Rows& B, const Weights& C)
  {
    if (filled_ + B.rows() > max_rows)
      add_product();
    rows_.middleRows(filled_, B.rows()) = B;
    weighted_.middleRows(filled_, B.rows()) = (area * C).lazyProduct(B);
    filled_ += B.rows();
  }

  void finish()
  {
    add_product();
    sum_.template triangularView<Eigen::StrictlyUpper>() = sum_.transpose();
  }

private:
  static constexpr int max_rows = num_triangle_points * (num_strains + 1);
  using Rows = Eigen::Matrix<double, max_rows, 5 * n>;

  void add_product()
  {
    sum_.template triangularView<Eigen::Lower>() += rows_.topRows(filled_).transpose() * weighted_.topRows(filled_);
    filled_ = 0;
  }

  Matrix& sum_;
  Rows rows_;
  Rows weighted_;
  Eigen::Index filled_ = 0;
};

} // namespace plate::shell_kinematics
