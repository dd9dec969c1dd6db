// SPDX-License-Identifier: MPL-2.0
#include "shell_kinematics.h"

#include <plate/elements/quadrature.h>

#include <Eigen/Geometry>
#include <Eigen/LU>

#include <vector>

namespace plate::shell_kinematics
{

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

} // namespace plate::shell_kinematics
