// SPDX-License-Identifier: MPL-2.0
#include <plate/laminates/constants.h>

#include <Eigen/LU>

#include <cmath>

namespace plate
{

namespace
{

/// Strains (11, 22, 12) in axes turned by an angle from those in x and y.
Eigen::Matrix3d strain_rotation(Angle angle)
{
  const double c = std::cos(angle.in_radians());
  const double s = std::sin(angle.in_radians());
  Eigen::Matrix3d T;
  T << c * c, s * s, c * s, s * s, c * c, -c * s, -2.0 * c * s, 2.0 * c * s, c * c - s * s;
  return T;
}

/// @param factor  E = 1 / (factor * compliance)
EngineeringConstants constants(const Eigen::Matrix3d& compliance, double factor)
{
  return {.Ex = 1.0 / (factor * compliance(0, 0)),
          .Ey = 1.0 / (factor * compliance(1, 1)),
          .Gxy = 1.0 / (factor * compliance(2, 2)),
          .nuxy = -compliance(1, 0) / compliance(0, 0)};
}

} // namespace

Matrix6d abd_matrix(const SectionStiffness& section)
{
  Matrix6d abd;
  abd << section.P[0], section.P[1], section.P[1], section.P[2];
  return abd;
}

EngineeringConstants membrane_constants(const Matrix6d& abd, double thickness)
{
  return constants(abd.inverse().topLeftCorner<3, 3>(), thickness);
}

EngineeringConstants bending_constants(const Matrix6d& abd, double thickness)
{
  return constants(abd.inverse().bottomRightCorner<3, 3>(), std::pow(thickness, 3) / 12.0);
}

StripStiffness strip_stiffness(const Matrix6d& abd, double thickness, Angle angle)
{
  // Compliances turn like strains on either side.
  const Eigen::RowVector3d along = strain_rotation(angle).row(0);
  const Matrix6d compliance = abd.inverse();
  const double a = along * compliance.topLeftCorner<3, 3>() * along.transpose();
  const double d = along * compliance.bottomRightCorner<3, 3>() * along.transpose();
  return {.modulus = 1.0 / (thickness * a), .bending = 1.0 / d};
}

Eigen::Vector3d free_strain(Angle angle, const Expansion& expansion)
{
  const Angle back = Angle::radians(-angle.in_radians());
  return strain_rotation(back) * Eigen::Vector3d(expansion.along, expansion.across, 0.0);
}

std::optional<Vector6d> free_expansion(const Laminate& laminate, std::optional<Expansion> Material::*expansion)
{
  const Eigen::Matrix3d flat = Eigen::Matrix3d::Identity();
  std::vector<PlacedPly> plies;
  place_plies(laminate, total_thickness(laminate), plies);
  Vector6d forces = Vector6d::Zero();
  for (const PlacedPly& ply : plies)
  {
    const std::optional<Expansion>& free = ply.material->*expansion;
    if (!free)
      return std::nullopt;
    const Eigen::Matrix3d Q =
        ply_compliance(*ply.material, ply.angle, ply.grain, flat, {}).topLeftCorner<3, 3>().inverse();
    const Eigen::Vector3d strain = free_strain(ply.angle, *free);
    forces.head<3>() += (ply.top - ply.bottom) * Q * strain;
    forces.tail<3>() += 0.5 * (ply.top * ply.top - ply.bottom * ply.bottom) * Q * strain;
  }
  return abd_matrix(section_stiffness(plies, flat, {})).inverse() * forces;
}

double radiation_ratio(double bending, double areal)
{
  return std::sqrt(12.0 * bending / std::pow(areal, 3));
}

} // namespace plate
