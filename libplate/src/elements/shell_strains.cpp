// SPDX-License-Identifier: MPL-2.0
#include <plate/elements/shell_strains.h>

#include "shell_terms.h"

#include <plate/elements/quadrature.h>

#include <Eigen/LU>

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

/// Derivatives along (xi, eta) of the shear strains (13, 23) of fields, rows 13, 23 for xi, then for eta: those of the
/// straight line that fits them best over the triangle. A local derivative would see the ripple of the element.
Eigen::Matrix<double, 4, Eigen::Dynamic> shear_trend(const ShellTriangleNodes& nodes, const MaterialAxes& axes,
                                                     const Rotations<num_nodes>& rotations,
                                                     const ShellTriangle::Displacements& u)
{
  Eigen::Matrix<double, 4, Eigen::Dynamic> moments = Eigen::Matrix<double, 4, Eigen::Dynamic>::Zero(4, u.cols());
  Eigen::Matrix2d gram = Eigen::Matrix2d::Zero();
  const auto& rule = triangle_points();
  const std::span<const ShapePoint> points = quadrature(false);
  for (std::size_t i = 0; i < rule.size(); ++i)
  {
    const ShellPoint p = shell_point(nodes, points[i], axes);
    const Eigen::Vector2d off = Eigen::Vector2d(rule[i].xi, rule[i].eta).array() - 1.0 / 3.0; // from the centre
    const Eigen::Matrix<double, 2, Eigen::Dynamic> shear =
        strain_rows(p).bottomRows<2>() * (frame_gradients(cubic_field(p), rotations) * u);
    moments.topRows<2>() += rule[i].weight * off.x() * shear;
    moments.bottomRows<2>() += rule[i].weight * off.y() * shear;
    gram += rule[i].weight * off * off.transpose();
  }
  const Eigen::Matrix2d inverse = gram.inverse();
  Eigen::Matrix<double, 4, Eigen::Dynamic> trend(4, u.cols());
  trend.topRows<2>() = inverse(0, 0) * moments.topRows<2>() + inverse(0, 1) * moments.bottomRows<2>();
  trend.bottomRows<2>() = inverse(1, 0) * moments.topRows<2>() + inverse(1, 1) * moments.bottomRows<2>();
  return trend;
}

BarStrainPoint bar_strain_point(const Bar& bar, const ShellPoint& p, std::span<const PlacedPly> plies,
                                const MaterialAxes& axes)
{
  const BarPoint point = bar_point(bar, p, plies, axes);
  const double top = plies.front().bottom;
  return {
      .top = top, .bottom = top - bar.profile.at(p.station), .direction = {point.c, point.s}, .section = point.section};
}

} // namespace

std::vector<ShellStrainPoint> shell_strains(const ShellTriangleNodes& nodes, const ShellMaterial& material,
                                            const TriangleParts& parts, std::span<const Eigen::Vector2d> places,
                                            const ShellTriangle::Displacements& u)
{
  const Rotations<num_nodes> rotations = node_rotations(nodes, material.axes);
  const Eigen::Matrix<double, 4, Eigen::Dynamic> trend = shear_trend(nodes, material.axes, rotations, u);
  std::vector<ShellStrainPoint> points;
  for (const Eigen::Vector2d& place : places)
  {
    const ShapePoint at = {1.0, CubicTriangle::shape(place.x(), place.y()),
                           CubicTriangle::gradient(place.x(), place.y())};
    const ShellPoint p = shell_point(nodes, at, material.axes);
    ShellStrainPoint& out = points.emplace_back();
    out.position = nodes.position * p.N;
    out.frame = p.frame;
    plies_at(p, material, parts, out.plies);
    if (parts.bar != nullptr)
      out.bar = bar_strain_point(*parts.bar, p, out.plies, material.axes);
    const Eigen::Matrix<double, num_strains, Eigen::Dynamic> strains =
        strain_rows(p) * (frame_gradients(cubic_field(p), rotations) * u);
    for (Eigen::Index i = 0; i < u.cols(); ++i)
    {
      SectionStrains& section = out.strains.emplace_back();
      section.in_plane << strains.col(i).segment<3>(0), strains.col(i).segment<3>(3), strains.col(i).segment<3>(6);
      section.shear = strains.col(i).segment<2>(9);
      Eigen::Matrix2d along_natural;
      along_natural << trend.col(i).head<2>(), trend.col(i).tail<2>();
      section.shear_slope = along_natural * p.to_frame;
    }
  }
  return points;
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
