// SPDX-License-Identifier: MPL-2.0
#include <plate/elements/shell_triangle.h>

#include "field_products.h"
#include "shell_terms.h"

#include <plate/elements/glued_torsion.h>

#include <Eigen/Geometry>
#include <Eigen/LU>

#include <span>
#include <vector>

namespace plate
{

namespace
{

using namespace shell_kinematics;

/// Calls visit(point, plies) at each quadrature point.
template <class Visit>
void for_each_point(const ShellTriangleNodes& nodes, const ShellMaterial& material, const TriangleParts& parts,
                    const Visit& visit)
{
  std::vector<PlacedPly> plies;
  for (const ShapePoint& at : quadrature(parts.patch_edge))
  {
    const ShellPoint p = shell_point(nodes, at, material.axes);
    plies_at(p, material, parts, plies);
    visit(p, plies);
  }
}

void integrate(const ShellTriangleNodes& nodes, const ShellMaterial& material, const TriangleParts& parts,
               FieldProducts<num_nodes>& products)
{
  for_each_point(nodes, material, parts,
                 [&](const ShellPoint& p, std::span<const PlacedPly> plies)
                 {
                   products.start_point(cubic_field(p));
                   visit_energy(p, material, parts, plies,
                                [&](double area, const auto& rows, const auto& C)
                                { products.add_energy(area, rows, C); });
                   products.set_inertia(p.area, inertia(p, material, parts, plies));
                 });
}

/// A ply as torsion about the bar sees it: its neighbours keep it from stretching where it is sheared in the plane.
TorsionLayer torsion_layer(const PlacedPly& ply, const Eigen::Matrix3d& frame, const Eigen::Matrix3d& along,
                           const MaterialAxes& axes)
{
  const Eigen::Matrix<double, 5, 5> S = ply_compliance(*ply.material, ply.angle, ply.grain, frame, axes);
  const Eigen::Vector2d d = frame.leftCols<2>().transpose() * along.col(0); // of the bar in the frame
  // Strains (11, 22, 12) of a unit shear between the bar's direction and the one across.
  const Eigen::Vector3d shear(-d.x() * d.y(), d.x() * d.y(), d.x() * d.x() - d.y() * d.y());
  const Eigen::Matrix3d Q = S.topLeftCorner<3, 3>().inverse();
  return {.thickness = ply.top - ply.bottom,
          .G_across = shear.dot(Q * shear),
          .G_normal = 1.0 / d.dot(S.bottomRightCorner<2, 2>() * d)};
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

void ShellTriangle::matrices(const ShellTriangleNodes& nodes, const ShellMaterial& material, const TriangleParts& parts,
                             Matrix& K, MassMoments& mass)
{
  FieldProducts<num_nodes> products;
  integrate(nodes, material, parts, products);
  products.stiffness(node_rotations(nodes, material.axes), K);
  mass = products.mass();
}

void ShellTriangle::stiffness(const ShellTriangleNodes& nodes, const ShellMaterial& material,
                              const TriangleParts& parts, Matrix& K)
{
  MassMoments mass;
  matrices(nodes, material, parts, K, mass);
}

void ShellTriangle::mass(const ShellTriangleNodes& nodes, const ShellMaterial& material, const TriangleParts& parts,
                         Matrix& M)
{
  FieldProducts<num_nodes> products;
  for_each_point(nodes, material, parts,
                 [&](const ShellPoint& p, std::span<const PlacedPly> plies)
                 {
                   products.start_point(cubic_field(p));
                   products.set_inertia(p.area, inertia(p, material, parts, plies));
                 });
  expand_mass(products.mass(), nodes, material.axes, M);
}

void ShellTriangle::expand_mass(const MassMoments& mass, const ShellTriangleNodes& nodes, const MaterialAxes& axes,
                                Matrix& M)
{
  shell_kinematics::expand_mass(mass, node_rotations(nodes, axes), M);
}

void ShellTriangle::add_strain_energies(const ShellTriangleNodes& nodes, const ShellMaterial& material,
                                        const TriangleParts& parts, const Displacements& u,
                                        Eigen::Ref<Eigen::VectorXd> energies)
{
  const Rotations<num_nodes> rotations = node_rotations(nodes, material.axes);
  for_each_point(nodes, material, parts,
                 [&](const ShellPoint& p, std::span<const PlacedPly> plies)
                 {
                   const Eigen::Matrix<double, num_frame_gradients, Eigen::Dynamic> g =
                       frame_gradients(cubic_field(p), rotations) * u;
                   visit_energy(p, material, parts, plies,
                                [&](double area, const auto& rows, const auto& C)
                                {
                                  const Eigen::MatrixXd strain = rows * g;
                                  energies += 0.5 * area * strain.cwiseProduct(C * strain).colwise().sum().transpose();
                                });
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

} // namespace plate
