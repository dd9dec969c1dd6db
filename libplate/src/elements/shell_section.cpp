// SPDX-License-Identifier: MPL-2.0
#include "shell_section.h"

#include <Eigen/LU>

#include <cmath>

namespace plate::shell_kinematics
{

namespace
{

/// Lays the plies of a patch on one side of a stack.
void add_plies(const Laminate& laminate, PlateSide side, std::vector<PlacedPly>& plies)
{
  double bottom = side == PlateSide::outside ? plies.back().top : plies.front().bottom - total_thickness(laminate);
  auto place = side == PlateSide::outside ? plies.end() : plies.begin();
  for (const Ply& ply : laminate.plies)
  {
    const double top = bottom + ply.thickness;
    place = plies.insert(
        place, {.material = &ply.material, .bottom = bottom, .top = top, .angle = ply.angle, .grain = ply.grain});
    ++place;
    bottom = top;
  }
}

} // namespace

VolumeRatio volume_ratio(const ShellPoint& p)
{
  return {p.b.trace(), p.b.determinant()};
}

void plies_at(const ShellPoint& p, const ShellMaterial& material, const TriangleParts& parts,
              std::vector<PlacedPly>& plies)
{
  place_plies(material.laminate, p.thickness, plies);
  for (const NodalDirections& directions : parts.directions)
  {
    const Eigen::Vector2d twice = directions.double_angle * p.N;
    plies[directions.ply].angle = Angle::radians(0.5 * std::atan2(twice.y(), twice.x()));
  }
  for (const Patch* patch : parts.patches)
    if (contains(patch->region, p.place))
      add_plies(patch->laminate, patch->side, plies);
}

StrainMatrix plate_stiffness(const SectionStiffness& section, const VolumeRatio& ratio)
{
  StrainMatrix C = StrainMatrix::Zero();
  const std::array<Eigen::Matrix3d, 5> P = with_volume(section.P, ratio);
  for (int row = 0; row < 3; ++row)
    for (int col = 0; col < 3; ++col)
      C.block<3, 3>(3 * row, 3 * col) = P[static_cast<std::size_t>(row + col)];
  Eigen::Matrix<double, 2, num_strains> gamma = Eigen::Matrix<double, 2, num_strains>::Zero();
  gamma.block<2, 3>(0, 0) = -section.G0;
  gamma.block<2, 3>(0, 3) = -section.G1;
  gamma.block<2, 2>(0, 9).setIdentity();
  C.noalias() += gamma.transpose() * section.shear * gamma;
  return C;
}

Eigen::Matrix3d frame_along(const Bar& bar, const ShellPoint& p, const MaterialAxes& axes)
{
  return shell_frame(p.frame.col(2), {.axis = bar.axis, .up = axes.up});
}

BarPoint bar_point(const Bar& bar, const ShellPoint& p, std::span<const PlacedPly> plies, const MaterialAxes& axes)
{
  const Eigen::Matrix3d along = frame_along(bar, p, axes);
  return {.section = bar_section(bar, plies.front().bottom, bar.profile.at(p.station), along, axes),
          .c = along.col(0).dot(p.frame.col(0)),
          .s = along.col(0).dot(p.frame.col(1))};
}

StrainMatrix bar_stiffness(const BarPoint& bar, const VolumeRatio& ratio)
{
  StrainMatrix C = StrainMatrix::Zero();
  const Eigen::Vector3d along(bar.c * bar.c, bar.s * bar.s, bar.c * bar.s);
  const std::array<double, 5> P = with_volume(bar.section.P, ratio);
  for (int row = 0; row < 3; ++row)
    for (int col = 0; col < 3; ++col)
      C.block<3, 3>(3 * row, 3 * col) = P[static_cast<std::size_t>(row + col)] * along * along.transpose();
  // The shear of the bar sees the strain along it at the middle of its height.
  const double middle = bar.section.P[1] / bar.section.P[0];
  Eigen::Matrix<double, num_strains, 1> gamma = Eigen::Matrix<double, num_strains, 1>::Zero();
  gamma.segment<3>(0) = -bar.section.shear_from_strain * along;
  gamma.segment<3>(3) = -bar.section.shear_from_strain * middle * along;
  gamma(9) = bar.c;
  gamma(10) = bar.s;
  C.noalias() += bar.section.shear * gamma * gamma.transpose();
  return C;
}

} // namespace plate::shell_kinematics
