// SPDX-License-Identifier: MPL-2.0
#include <plate/laminates/section.h>

#include <Eigen/Geometry>
#include <Eigen/LU>

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

using Matrix5d = Eigen::Matrix<double, 5, 5>;
using Matrix6d = Eigen::Matrix<double, 6, 6>;
using Matrix23d = Eigen::Matrix<double, 2, 3>;

/// Stresses (11, 22, 33, 23, 13, 12) in axes m (columns, seen from the frame) from stresses in the frame.
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

/// Axes of a ply as columns, components in the frame of the shell point.
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

/// What one ply brings to the section, in the frame of the point.
struct PlyStiffness
{
  double bottom;                    // [m]
  double top;                       // [m]
  Eigen::Matrix3d P;                // in-plane stiffness at zero transverse shear stress [Pa]
  Matrix23d shear_from_strain;      // shear strain per in-plane strain at zero transverse shear stress [-]
  Eigen::Matrix2d shear_compliance; // at held in-plane strain [1/Pa]
};

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

/// Abscissae and weights on [-1, 1], exact to degree five: the shear stress of a ply is quadratic, its energy quartic.
constexpr double gauss_point[3] = {-0.7745966692414834, 0.0, 0.7745966692414834};
constexpr double gauss_weight[3] = {5.0 / 9.0, 8.0 / 9.0, 5.0 / 9.0};

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

void add_shear(const std::vector<PlyStiffness>& plies, SectionStiffness& section)
{
  const BendingCompliance unit = bending_compliance(section.P);
  Eigen::Matrix2d compliance = Eigen::Matrix2d::Zero();
  section.G0.setZero();
  section.G1.setZero();
  Eigen::Matrix2d at_bottom = Eigen::Matrix2d::Zero(); // shear stress per shear force at the bottom of the ply
  for (const PlyStiffness& ply : plies)
  {
    const Eigen::Matrix2d constant = equilibrium_rows(ply.P * unit.strain);
    const Eigen::Matrix2d linear = equilibrium_rows(ply.P * unit.curvature);
    const auto shear_stress = [&](double z) -> Eigen::Matrix2d
    { return at_bottom - constant * (z - ply.bottom) - linear * (0.5 * (z * z - ply.bottom * ply.bottom)); };
    const double half = 0.5 * (ply.top - ply.bottom);
    const double middle = 0.5 * (ply.top + ply.bottom);
    for (int q = 0; q < 3; ++q)
    {
      const double z = middle + half * gauss_point[q];
      const double w = half * gauss_weight[q];
      const Eigen::Matrix2d F = shear_stress(z);
      compliance += w * F.transpose() * ply.shear_compliance * F;
      const Matrix23d g = F.transpose() * ply.shear_from_strain;
      section.G0 += w * g;
      section.G1 += w * z * g;
    }
    at_bottom = shear_stress(ply.top);
  }
  section.shear = compliance.inverse();
}

double scale_to(const Laminate& laminate, double thickness)
{
  return thickness / total_thickness(laminate);
}

} // namespace

Eigen::Matrix3d shell_frame(const Eigen::Vector3d& normal, const MaterialAxes& axes)
{
  Eigen::Vector3d e1 = axes.axis - normal * normal.dot(axes.axis);
  if (e1.squaredNorm() < 1e-12) // a wall square to the axis: any fixed direction in it serves
    e1 = axes.up - normal * normal.dot(axes.up);
  e1.normalize();
  Eigen::Matrix3d frame;
  frame << e1, normal.cross(e1), normal;
  return frame;
}

Matrix5d ply_compliance(const Material& material, Angle angle, Grain grain, const Eigen::Matrix3d& frame,
                        const MaterialAxes& axes)
{
  const Matrix6d T = stress_rotation(ply_axes_in_frame(angle, grain, frame, axes));
  const Matrix6d S = T.transpose() * compliance(material.elastic) * T;
  constexpr std::array<int, 5> plane = {0, 1, 5, 4, 3}; // (11, 22, 12, 13, 23): the 33 stress is zero
  return S(plane, plane);
}

void place_plies(const Laminate& laminate, double thickness, std::vector<PlacedPly>& plies)
{
  const double scale = scale_to(laminate, thickness);
  plies.clear();
  double bottom = -0.5 * thickness;
  for (const Ply& ply : laminate.plies)
  {
    const double top = bottom + scale * ply.thickness;
    plies.push_back({.material = &ply.material, .bottom = bottom, .top = top, .angle = ply.angle, .grain = ply.grain});
    bottom = top;
  }
}

SectionStiffness section_stiffness(std::span<const PlacedPly> placed, const Eigen::Matrix3d& frame,
                                   const MaterialAxes& axes)
{
  std::vector<PlyStiffness> plies;
  plies.reserve(placed.size());
  SectionStiffness section;
  section.P.fill(Eigen::Matrix3d::Zero());
  for (const PlacedPly& ply : placed)
  {
    plies.push_back(ply_stiffness(ply, frame, axes));
    double bottom_power = ply.bottom;
    double top_power = ply.top;
    for (int k = 0; k < 5; ++k)
    {
      section.P[static_cast<std::size_t>(k)] += (top_power - bottom_power) / (k + 1) * plies.back().P;
      bottom_power *= ply.bottom;
      top_power *= ply.top;
    }
  }
  add_shear(plies, section);
  return section;
}

SectionStiffness section_stiffness(const Laminate& laminate, double thickness, const Eigen::Matrix3d& frame,
                                   const MaterialAxes& axes)
{
  std::vector<PlacedPly> plies;
  place_plies(laminate, thickness, plies);
  return section_stiffness(plies, frame, axes);
}

SectionMass section_mass(std::span<const PlacedPly> plies)
{
  SectionMass mass = {};
  for (const PlacedPly& ply : plies)
  {
    double bottom_power = ply.bottom;
    double top_power = ply.top;
    for (std::size_t k = 0; k < mass.size(); ++k)
    {
      mass[k] += ply.material->density * (top_power - bottom_power) / static_cast<double>(k + 1);
      bottom_power *= ply.bottom;
      top_power *= ply.top;
    }
  }
  return mass;
}

SectionMass section_mass(const Laminate& laminate, double thickness)
{
  std::vector<PlacedPly> plies;
  place_plies(laminate, thickness, plies);
  return section_mass(plies);
}

Laminate with_loss_step(const Laminate& laminate, double step)
{
  Laminate changed = laminate;
  for (Ply& ply : changed.plies)
    ply.material = with_loss_step(ply.material, step);
  return changed;
}

bool follows_surface(const Laminate& laminate)
{
  return std::all_of(laminate.plies.begin(), laminate.plies.end(),
                     [](const Ply& ply) { return ply.grain == Grain::laid; });
}

} // namespace plate
