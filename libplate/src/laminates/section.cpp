// SPDX-License-Identifier: MPL-2.0
#include <plate/laminates/section.h>

#include "section_plies.h"

#include <Eigen/Geometry>
#include <Eigen/LU>

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

using namespace section_plies;

void add_shear(std::span<const PlyStiffness> plies, SectionStiffness& section)
{
  const std::vector<ShearDistribution> shear = shear_distributions(plies, section.P);
  Eigen::Matrix2d compliance = Eigen::Matrix2d::Zero();
  section.G0.setZero();
  section.G1.setZero();
  for (std::size_t i = 0; i < plies.size(); ++i)
  {
    const PlyStiffness& ply = plies[i];
    const double half = 0.5 * (ply.top - ply.bottom);
    const double middle = 0.5 * (ply.top + ply.bottom);
    for (std::size_t q = 0; q < gauss_point.size(); ++q)
    {
      const double z = middle + half * gauss_point[q];
      const double w = half * gauss_weight[q];
      const Eigen::Matrix2d F = shear[i].at(z);
      compliance += w * F.transpose() * ply.shear_compliance * F;
      const Matrix23d g = F.transpose() * ply.shear_from_strain;
      section.G0 += w * g;
      section.G1 += w * z * g;
    }
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
  const std::vector<PlyStiffness> plies = ply_stiffnesses(placed, frame, axes);
  SectionStiffness section;
  section.P.fill(Eigen::Matrix3d::Zero());
  for (const PlyStiffness& ply : plies)
  {
    double bottom_power = ply.bottom;
    double top_power = ply.top;
    for (int k = 0; k < 5; ++k)
    {
      section.P[static_cast<std::size_t>(k)] += (top_power - bottom_power) / (k + 1) * ply.P;
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
