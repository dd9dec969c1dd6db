// SPDX-License-Identifier: MPL-2.0
#include "shell_kinematics.h"

#include <plate/elements/quadrature.h>

#include <Eigen/Geometry>
#include <Eigen/LU>

#include <vector>

namespace plate::shell_kinematics
{

namespace
{

/// Rows (11, 22, 12) of sym(v_a . f,b) for a nodal vector f with gradient (g1, g2), v = columns of a 3 x 2 matrix.
Eigen::Matrix3d strain_rows(const Matrix32d& v, double g1, double g2)
{
  Eigen::Matrix3d rows;
  rows.row(0) = g1 * v.col(0).transpose();
  rows.row(1) = g2 * v.col(1).transpose();
  rows.row(2) = g2 * v.col(0).transpose() + g1 * v.col(1).transpose();
  return rows;
}

/// Voigt matrix of E -> b E + E b^T.
Eigen::Matrix3d shift_once(const Eigen::Matrix2d& b)
{
  Eigen::Matrix3d L;
  L << 2.0 * b(0, 0), 0.0, b(0, 1), 0.0, 2.0 * b(1, 1), b(1, 0), 2.0 * b(1, 0), 2.0 * b(0, 1), b(0, 0) + b(1, 1);
  return L;
}

/// Voigt matrix of E -> b E b^T.
Eigen::Matrix3d shift_both(const Eigen::Matrix2d& b)
{
  Eigen::Matrix3d K;
  K << b(0, 0) * b(0, 0), b(0, 1) * b(0, 1), b(0, 0) * b(0, 1), //
      b(1, 0) * b(1, 0), b(1, 1) * b(1, 1), b(1, 0) * b(1, 1),  //
      2.0 * b(0, 0) * b(1, 0), 2.0 * b(0, 1) * b(1, 1), b(0, 0) * b(1, 1) + b(0, 1) * b(1, 0);
  return K;
}

} // namespace

std::vector<ShapePoint> shape_points(std::span<const TrianglePoint> rule)
{
  std::vector<ShapePoint> points;
  for (const TrianglePoint& p : rule)
    points.push_back({p.weight, CubicTriangle::shape(p.xi, p.eta), CubicTriangle::gradient(p.xi, p.eta)});
  return points;
}

std::span<const ShapePoint> quadrature(bool fine)
{
  static const std::vector<ShapePoint> usual_points = shape_points(triangle_points());
  static const std::vector<ShapePoint> fine_points = shape_points(fine_triangle_points());
  return fine ? fine_points : usual_points;
}

Matrix32d director_rotation(const Eigen::Vector3d& director, const MaterialAxes& axes)
{
  const Eigen::Matrix3d frame = shell_frame(director, axes);
  Matrix32d rotation;
  rotation << -frame.col(1), frame.col(0); // t1 x d = -t2, t2 x d = t1
  return rotation;
}

Rotations<num_nodes> node_rotations(const ShellTriangleNodes& nodes, const MaterialAxes& axes)
{
  Rotations<num_nodes> rotations;
  for (int i = 0; i < num_nodes; ++i)
    rotations.middleCols<2>(2 * i) = director_rotation(nodes.normal.col(i), axes);
  return rotations;
}

ShellPoint shell_point(const ShellTriangleNodes& nodes, const ShapePoint& at, const MaterialAxes& axes)
{
  ShellPoint p;
  p.N = at.shape;
  const Matrix32d tangents = nodes.position * at.gradient;
  const Eigen::Vector3d normal = tangents.col(0).cross(tangents.col(1));
  const double jacobian = normal.norm();
  p.frame = shell_frame(normal / jacobian, axes);
  const Eigen::Matrix2d J = tangents.transpose() * p.frame.leftCols<2>();
  p.to_frame = J.inverse().transpose();
  p.dN = at.gradient * p.to_frame;
  p.director = nodes.normal * p.N;
  p.director_slope = nodes.normal * p.dN;
  p.b = p.director_slope.transpose() * p.frame.leftCols<2>();
  p.area = at.weight * jacobian;
  p.thickness = nodes.thickness * p.N;
  p.station = nodes.station * p.N;
  p.place = nodes.position.topRows<2>() * p.N;
  return p;
}

template <int n>
void covariant_strain_rows(const ShellPoint& p, const FieldPoint<n>& field, const Rotations<n>& rotations,
                           StrainRows<n>& B)
{
  const Matrix32d e = p.frame.leftCols<2>();
  for (int i = 0; i < n; ++i)
  {
    const double g1 = field.dN(i, 0);
    const double g2 = field.dN(i, 1);
    const Matrix32d rotation = rotations.template middleCols<2>(2 * i);
    const Eigen::Matrix3d from_tangents = strain_rows(e, g1, g2);
    const Eigen::Matrix3d from_slopes = strain_rows(p.director_slope, g1, g2);
    const int u = 5 * i;
    B.template block<3, 3>(0, u) = from_tangents;
    B.template block<3, 3>(3, u) = from_slopes;
    B.template block<3, 3>(6, u).setZero();
    B.template block<1, 3>(9, u) = g1 * p.director.transpose();
    B.template block<1, 3>(10, u) = g2 * p.director.transpose();
    B.template block<3, 2>(0, u + 3).setZero();
    B.template block<3, 2>(3, u + 3).noalias() = from_tangents * rotation;
    B.template block<3, 2>(6, u + 3).noalias() = from_slopes * rotation;
    B.template block<2, 2>(9, u + 3).noalias() = field.N(i) * e.transpose() * rotation;
  }
}

template void covariant_strain_rows<num_nodes>(const ShellPoint&, const FieldPoint<num_nodes>&,
                                               const Rotations<num_nodes>&, StrainRows<num_nodes>&);
template void covariant_strain_rows<num_unit_functions>(const ShellPoint&, const FieldPoint<num_unit_functions>&,
                                                        const Rotations<num_unit_functions>&,
                                                        StrainRows<num_unit_functions>&);

StrainMatrix physical_from_covariant(const Eigen::Matrix2d& b)
{
  StrainMatrix T = StrainMatrix::Identity();
  const Eigen::Matrix3d L = shift_once(b);
  T.block<3, 3>(3, 0) = -L;
  T.block<3, 3>(6, 0) = L * L - shift_both(b);
  T.block<3, 3>(6, 3) = -L;
  return T;
}

} // namespace plate::shell_kinematics
