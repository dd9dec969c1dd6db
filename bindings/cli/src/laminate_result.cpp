// SPDX-License-Identifier: MPL-2.0
#include "laminate_result.h"

namespace plate
{

LaminateResult compute_laminate(const LayupDesign& design)
{
  const Laminate& laminate = design.laminate;
  const double thickness = total_thickness(laminate);
  const SectionStiffness section = section_stiffness(laminate, thickness, Eigen::Matrix3d::Identity(), {});
  const Matrix6d abd = abd_matrix(section);
  LaminateResult result = {.title = design.title,
                           .laminate = laminate,
                           .thickness = thickness,
                           .areal_mass = areal_mass(laminate),
                           .abd = abd,
                           .shear = section.shear,
                           .membrane = membrane_constants(abd, thickness),
                           .bending = bending_constants(abd, thickness),
                           .thermal = free_expansion(laminate, &Material::thermal),
                           .swelling = free_expansion(laminate, &Material::swelling),
                           .polar = {}};
  for (int angle = 0; angle < 360; angle += polar_step)
    result.polar.push_back(strip_stiffness(abd, thickness, Angle::degrees(angle)));
  return result;
}

std::string without_expansion(const Laminate& laminate, std::optional<Expansion> Material::*expansion)
{
  for (const Ply& ply : laminate.plies)
    if (!(ply.material.*expansion))
      return ply.material.name;
  return {};
}

} // namespace plate
