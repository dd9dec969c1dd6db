// SPDX-License-Identifier: MPL-2.0
#include "section_plies.h"

#include <Eigen/Geometry>
#include <Eigen/LU>

#include <cmath>

namespace plate::section_plies
{

namespace
{

PlyStiffness ply_stiffness(const PlacedPly& ply, const Eigen::Matrix3d& frame, const MaterialAxes& axes)
{
  const Matrix5d S = ply_compliance(*ply.material, ply.angle, ply.grain, frame, axes);
  const Eigen::Matrix3d P = S.topLeftCorner<3, 3>().inverse();
  const Matrix23d g = S.bottomLeftCorner<2, 3>() * P;
  return {.bottom = ply.bottom,
          .top = ply.top,
          .P = P,
          .shear_from_strain = g,
          .shear_compliance = S.bottomRightCorner<2, 2>() - g * S.topRightCorner<3, 2>()};
}

/// Strain and curvature of a stack per unit moment at zero membrane force, columns for M11 and M22.
struct BendingCompliance
{
  Eigen::Matrix<double, 3, 2> strain;    // [1/N]
  Eigen::Matrix<double, 3, 2> curvature; // [1/(N m)]
};

BendingCompliance bending_compliance(const std::array<Eigen::Matrix3d, 5>& P)
{
  // N = A e + B k = 0 and M = B e + D k give k = (D - B A^-1 B)^-1 M, e = -A^-1 B k.
  const Eigen::Matrix3d A_inv_B = P[0].inverse() * P[1];
  const Eigen::Matrix3d d = (P[2] - P[1] * A_inv_B).inverse();
  const Eigen::Matrix3d b = -A_inv_B * d;
  return {.strain = b.leftCols<2>(), .curvature = d.leftCols<2>()};
}

/// Derivative along z of minus the transverse shear stress (13, 23) per unit shear force: the stress gradients that
/// M11,1 = Q1 and M22,2 = Q2 bring, picked from rows (11, 22, 12) as equilibrium wants them.
Eigen::Matrix2d equilibrium_rows(const Eigen::Matrix<double, 3, 2>& stress)
{
  Eigen::Matrix2d F;
  F << stress(0, 0), stress(2, 1), stress(2, 0), stress(1, 1);
  return F;
}

} // namespace

Matrix6d stress_rotation(const Eigen::Matrix3d& m)
{
  constexpr int first[6] = {0, 1, 2, 1, 0, 0};
  constexpr int second[6] = {0, 1, 2, 2, 2, 1};
  Matrix6d T;
  for (int row = 0; row < 6; ++row)
  {
    const Eigen::Vector3d a = m.col(first[row]);
    const Eigen::Vector3d b = m.col(second[row]);
    for (int col = 0; col < 6; ++col)
    {
      const int i = first[col];
      const int j = second[col];
      T(row, col) = col < 3 ? a(i) * b(i) : a(i) * b(j) + a(j) * b(i);
    }
  }
  return T;
}

Eigen::Matrix3d ply_axes_in_frame(Angle angle, Grain grain, const Eigen::Matrix3d& frame, const MaterialAxes& axes)
{
  const double c = std::cos(angle.in_radians());
  const double s = std::sin(angle.in_radians());
  Eigen::Matrix3d turn;
  turn << c, -s, 0.0, s, c, 0.0, 0.0, 0.0, 1.0;
  if (grain == Grain::laid)
    return turn;
  Eigen::Matrix3d board;
  board << axes.axis, axes.up.cross(axes.axis), axes.up;
  return frame.transpose() * board * turn;
}

std::vector<PlyStiffness> ply_stiffnesses(std::span<const PlacedPly> plies, const Eigen::Matrix3d& frame,
                                          const MaterialAxes& axes)
{
  std::vector<PlyStiffness> out;
  out.reserve(plies.size());
  for (const PlacedPly& ply : plies)
    out.push_back(ply_stiffness(ply, frame, axes));
  return out;
}

std::vector<ShearDistribution> shear_distributions(std::span<const PlyStiffness> plies,
                                                   const std::array<Eigen::Matrix3d, 5>& P)
{
  const BendingCompliance unit = bending_compliance(P);
  std::vector<ShearDistribution> out;
  out.reserve(plies.size());
  Eigen::Matrix2d at_bottom = Eigen::Matrix2d::Zero();
  for (const PlyStiffness& ply : plies)
  {
    out.push_back({.bottom = ply.bottom,
                   .at_bottom = at_bottom,
                   .constant = equilibrium_rows(ply.P * unit.strain),
                   .linear = equilibrium_rows(ply.P * unit.curvature)});
    at_bottom = out.back().at(ply.top);
  }
  return out;
}

Eigen::Matrix2d Warping::at(double z) const
{
  const double s = z - shear.bottom;
  const double cubic = (z * z * z - shear.bottom * shear.bottom * shear.bottom) / 3.0 - shear.bottom * shear.bottom * s;
  const Eigen::Matrix2d F = shear.at_bottom * s - shear.constant * (0.5 * s * s) - shear.linear * (0.5 * cubic);
  return at_bottom + compliance * F - mean * s;
}

WarpingStrain Warping::strain(double z) const
{
  const Eigen::Matrix2d w = at(z);
  WarpingStrain E = WarpingStrain::Zero();
  E.block<1, 2>(0, 0) = w.row(0);
  E.block<1, 2>(1, 2) = w.row(1);
  E.block<1, 2>(2, 0) = w.row(1);
  E.block<1, 2>(2, 2) = w.row(0);
  return E;
}

std::vector<Warping> warpings(std::span<const PlyStiffness> plies, std::span<const ShearDistribution> shear,
                              const Eigen::Matrix2d& section_shear)
{
  const Eigen::Matrix2d mean = section_shear.inverse();
  std::vector<Warping> out;
  out.reserve(plies.size());
  Eigen::Matrix2d at_bottom = Eigen::Matrix2d::Zero();
  for (std::size_t i = 0; i < plies.size(); ++i)
  {
    out.push_back({.shear = shear[i], .compliance = plies[i].shear_compliance, .mean = mean, .at_bottom = at_bottom});
    at_bottom = out.back().at(plies[i].top);
  }
  return out;
}

} // namespace plate::section_plies
