// SPDX-License-Identifier: MPL-2.0
#include <plate/elements/shell_triangle.h>

#include "shell_kinematics.h"

#include <plate/elements/glued_torsion.h>
#include <plate/elements/quadrature.h>

#include <Eigen/Geometry>
#include <Eigen/LU>

#include <cmath>
#include <span>
#include <vector>

namespace plate
{

namespace
{

using namespace shell_kinematics;

/// Volume at distance z over volume at the mid-surface: 1 + linear z + quadratic z^2.
struct VolumeRatio
{
  double linear;    // [1/m]
  double quadratic; // [1/m2]
};

VolumeRatio volume_ratio(const ShellPoint& p)
{
  return {p.b.trace(), p.b.determinant()};
}

/// Moments of z^k P dz with the volume ratio, kept to z^4.
template <class Moments>
Moments with_volume(const Moments& P, const VolumeRatio& ratio)
{
  Moments out = P;
  for (std::size_t k = 0; k < P.size(); ++k)
  {
    if (k + 1 < P.size())
      out[k] += ratio.linear * P[k + 1];
    if (k + 2 < P.size())
      out[k] += ratio.quadratic * P[k + 2];
  }
  return out;
}

/// Section of the plate on physical strains.
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

/// Plies of the laminate, in the directions they take here, and of the patches over the point.
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

/// A bar at one point of its footprint.
struct BarPoint
{
  BarSection section;
  double c; // direction of the bar in the frame of the point: c e1 + s e2
  double s;
};

/// Frame of a point with its first axis along the bar.
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

/// A ply as torsion about the bar sees it: its neighbours keep it from stretching where it is sheared in the plane.
TorsionLayer torsion_layer(const PlacedPly& ply, const Eigen::Matrix3d& frame, const Eigen::Matrix3d& along,
                           const MaterialAxes& axes)
{
  const Eigen::Matrix<double, 5, 5> S = ply_compliance(*ply.material, ply.angle, ply.grain, frame, axes);
  const Eigen::Vector2d d = frame.leftCols<2>().transpose() * along.col(0); // of the bar in the frame
  const Eigen::Vector3d shear(-2.0 * d.x() * d.y(), 2.0 * d.x() * d.y(), d.x() * d.x() - d.y() * d.y());
  const Eigen::Matrix3d Q = S.topLeftCorner<3, 3>().inverse();
  return {.thickness = ply.top - ply.bottom,
          .G_across = shear.dot(Q * shear),
          .G_normal = 1.0 / d.dot(S.bottomRightCorner<2, 2>() * d)};
}

/// Section of the bar on physical strains of the plate above it (torsion apart).
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

/// Rate of twist of the bar: how its cross-section turns about it, free of rigid motion.
Eigen::Matrix<double, 1, num_dofs> twist_row(const ShellPoint& p, const NodeRotations& rotations, const BarPoint& bar)
{
  const Eigen::Vector2d along(bar.c, bar.s);
  const Eigen::Vector3d across = -bar.s * p.frame.col(0) + bar.c * p.frame.col(1);
  const Eigen::Vector2d curvature = p.b.transpose() * along; // how the director tilts on a step along the bar
  const Eigen::Vector3d normal = p.frame.col(2);
  const double stretch =
      normal.dot(p.director_slope * along); // zero for exact normals; kept so that rigid motion is free
  Eigen::Matrix<double, 1, num_dofs> row;
  for (int i = 0; i < num_nodes; ++i)
  {
    const Eigen::Vector2d g = p.dN.row(i).transpose();
    const double g_across = bar.c * g(1) - bar.s * g(0);
    row.segment<3>(5 * i) = -g.dot(curvature) * across.transpose() + stretch * g_across * normal.transpose();
    row.segment<2>(5 * i + 3) = g.dot(along) * across.transpose() * rotations[static_cast<std::size_t>(i)];
  }
  return row;
}

/// Calls visit(area, rows, stiffness on the rows) at each quadrature point: the one description of the energy.
template <class Visit>
void for_each_energy_term(const ShellTriangleNodes& nodes, const ShellMaterial& material, const TriangleParts& parts,
                          Visit visit)
{
  const NodeRotations rotations = node_rotations(nodes, material.axes);
  StrainRows B;
  std::vector<PlacedPly> plies;
  for (const ShapePoint& at : quadrature(parts.patch_edge))
  {
    const ShellPoint p = shell_point(nodes, at, material.axes);
    const VolumeRatio ratio = volume_ratio(p);
    covariant_strain_rows(p, rotations, B);
    plies_at(p, material, parts, plies);
    StrainMatrix C = plate_stiffness(section_stiffness(plies, p.frame, material.axes), ratio);
    if (parts.bar != nullptr)
    {
      const BarPoint point = bar_point(*parts.bar, p, plies, material.axes);
      C += bar_stiffness(point, ratio);
      if (parts.bar_torsion != nullptr)
      {
        const Eigen::Matrix<double, 1, 1> torsion(parts.bar_torsion->at(p.station) / parts.bar->width);
        visit(p.area, twist_row(p, rotations, point), torsion);
      }
    }
    const StrainMatrix T = physical_from_covariant(p.b);
    visit(p.area, B, StrainMatrix(T.transpose() * C * T));
  }
}

} // namespace

Eigen::Matrix<double, 5, 6> rigid_motions_of_node(const Eigen::Vector3d& position, const Eigen::Vector3d& normal,
                                                  const MaterialAxes& axes)
{
  Eigen::Matrix<double, 5, 6> R = Eigen::Matrix<double, 5, 6>::Zero();
  R.topLeftCorner<3, 3>().setIdentity();
  const Eigen::Matrix3d frame = shell_frame(normal, axes);
  for (int k = 0; k < 3; ++k)
  {
    const Eigen::Vector3d turn = Eigen::Vector3d::Unit(k);
    R.block<3, 1>(0, 3 + k) = turn.cross(position);
    R.block<2, 1>(3, 3 + k) = frame.leftCols<2>().transpose() * turn;
  }
  return R;
}

ShellTriangle::RigidMotions ShellTriangle::rigid_motions(const ShellTriangleNodes& nodes, const MaterialAxes& axes)
{
  RigidMotions R;
  for (int i = 0; i < num_nodes; ++i)
    R.block<5, 6>(5 * i, 0) = rigid_motions_of_node(nodes.position.col(i), nodes.normal.col(i), axes);
  return R;
}

void ShellTriangle::stiffness(const ShellTriangleNodes& nodes, const ShellMaterial& material,
                              const TriangleParts& parts, Matrix& K)
{
  // Strain rows of twelve points first, then one product: its blocks stay in cache, and only half of it is computed.
  constexpr int max_rows = num_triangle_points * (num_strains + 1);
  Eigen::Matrix<double, max_rows, num_dofs> rows;
  Eigen::Matrix<double, max_rows, num_dofs> stresses;
  Eigen::Index n = 0;
  K.setZero();
  const auto add_product = [&]
  {
    K.triangularView<Eigen::Lower>() += rows.topRows(n).transpose() * stresses.topRows(n);
    n = 0;
  };
  for_each_energy_term(nodes, material, parts,
                       [&](double area, const auto& B, const auto& C)
                       {
                         if (n + B.rows() > max_rows)
                           add_product();
                         rows.middleRows(n, B.rows()) = B;
                         stresses.middleRows(n, B.rows()) = (area * C).lazyProduct(B);
                         n += B.rows();
                       });
  add_product();
  K.triangularView<Eigen::StrictlyUpper>() = K.transpose();
}

void ShellTriangle::add_strain_energies(const ShellTriangleNodes& nodes, const ShellMaterial& material,
                                        const TriangleParts& parts, const Displacements& u,
                                        Eigen::Ref<Eigen::VectorXd> energies)
{
  for_each_energy_term(nodes, material, parts,
                       [&](double area, const auto& B, const auto& C)
                       {
                         const Eigen::MatrixXd strain = B * u;
                         energies += 0.5 * area * strain.cwiseProduct(C * strain).colwise().sum().transpose();
                       });
}

double ShellTriangle::bar_torsion(const ShellTriangleNodes& nodes, const ShellMaterial& material,
                                  const TriangleParts& parts, int node, double height)
{
  const Eigen::RowVector2d at = CubicTriangle::node_coordinates().row(node);
  const ShapePoint place = {1.0, CubicTriangle::shape(at(0), at(1)), CubicTriangle::gradient(at(0), at(1))};
  const ShellPoint p = shell_point(nodes, place, material.axes);
  std::vector<PlacedPly> plies;
  plies_at(p, material, parts, plies);
  const Eigen::Matrix3d along = frame_along(*parts.bar, p, material.axes);
  std::vector<TorsionLayer> strip;
  for (const PlacedPly& ply : plies)
    strip.push_back(torsion_layer(ply, p.frame, along, material.axes));
  const Eigen::Matrix<double, 5, 5> S = bar_compliance(*parts.bar, along, material.axes);
  return glued_torsional_stiffness(parts.bar->width,
                                   {.thickness = height, .G_across = 1.0 / S(2, 2), .G_normal = 1.0 / S(3, 3)}, strip);
}

void ShellTriangle::mass(const ShellTriangleNodes& nodes, const ShellMaterial& material, const TriangleParts& parts,
                         Matrix& M)
{
  M.setZero();
  const NodeRotations rotations = node_rotations(nodes, material.axes);
  std::vector<PlacedPly> plies;
  for (const ShapePoint& at : quadrature(parts.patch_edge))
  {
    const ShellPoint p = shell_point(nodes, at, material.axes);
    plies_at(p, material, parts, plies);
    SectionMass moments = section_mass(plies);
    if (parts.bar != nullptr)
    {
      const BarPoint point = bar_point(*parts.bar, p, plies, material.axes);
      for (std::size_t k = 0; k < moments.size(); ++k)
        moments[k] += point.section.mass[k];
    }
    const SectionMass m = with_volume(moments, volume_ratio(p));
    for (int j = 0; j < num_nodes; ++j)
    {
      const Matrix32d& rotation_j = rotations[static_cast<std::size_t>(j)];
      for (int i = 0; i < num_nodes; ++i)
      {
        const Matrix32d& rotation_i = rotations[static_cast<std::size_t>(i)];
        const double N = p.area * p.N(i) * p.N(j);
        M.block<3, 3>(5 * i, 5 * j).diagonal().array() += N * m[0];
        M.block<3, 2>(5 * i, 5 * j + 3) += N * m[1] * rotation_j;
        M.block<2, 3>(5 * i + 3, 5 * j) += N * m[1] * rotation_i.transpose();
        M.block<2, 2>(5 * i + 3, 5 * j + 3) += N * m[2] * rotation_i.transpose() * rotation_j;
      }
    }
  }
}

} // namespace plate
