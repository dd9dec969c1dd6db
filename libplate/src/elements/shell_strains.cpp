// SPDX-License-Identifier: MPL-2.0
#include <plate/elements/shell_strains.h>

#include "shell_terms.h"

namespace plate
{

namespace
{

using namespace shell_kinematics;

/// Strain along a bar at a distance z [-].
double strain_along(const BarStrainPoint& bar, double z, const SectionStrains& strains)
{
  const double c = bar.direction.x();
  const double s = bar.direction.y();
  return Eigen::RowVector3d(c * c, s * s, c * s) * strains.in_plane * Eigen::Vector3d(1.0, z, z * z);
}

} // namespace

ShellStrainPoint shell_strains(const ShellTriangleNodes& nodes, const ShellMaterial& material,
                               const TriangleParts& parts, const Eigen::Vector2d& natural,
                               const ShellTriangle::Displacements& u)
{
  const ShapePoint at = {1.0, CubicTriangle::shape(natural.x(), natural.y()),
                         CubicTriangle::gradient(natural.x(), natural.y())};
  const ShellPoint p = shell_point(nodes, at, material.axes);
  ShellStrainPoint out = {.position = nodes.position * p.N, .frame = p.frame, .plies = {}, .bar = {}, .strains = {}};
  plies_at(p, material, parts, out.plies);
  if (parts.bar != nullptr)
  {
    const BarPoint bar = bar_point(*parts.bar, p, out.plies, material.axes);
    const double top = out.plies.front().bottom;
    out.bar = BarStrainPoint{.top = top,
                             .bottom = top - parts.bar->profile.at(p.station),
                             .direction = {bar.c, bar.s},
                             .section = bar.section};
  }
  StrainRows<num_nodes> B;
  covariant_strain_rows(p, cubic_field(p), node_rotations(nodes, material.axes), B);
  const Eigen::Matrix<double, num_strains, Eigen::Dynamic> strains = physical_from_covariant(p.b) * (B * u);
  for (const auto& field : strains.colwise())
  {
    SectionStrains& section = out.strains.emplace_back();
    section.in_plane << field.segment<3>(0), field.segment<3>(3), field.segment<3>(6);
    section.shear = field.segment<2>(9);
  }
  return out;
}

MaterialComponents bar_stress(const BarStrainPoint& bar, double z, const SectionStrains& strains)
{
  constexpr double greatest_over_mean = 1.5;
  const double height = bar.top - bar.bottom;
  const double modulus = bar.section.P[0] / height;
  const double middle = 0.5 * (bar.top + bar.bottom);
  const double shear =
      bar.direction.dot(strains.shear) - bar.section.shear_from_strain * strain_along(bar, middle, strains);
  MaterialComponents stress = MaterialComponents::Zero();
  stress(0) = modulus * strain_along(bar, z, strains);
  stress(4) = greatest_over_mean * bar.section.shear * shear / height;
  return stress;
}

} // namespace plate
