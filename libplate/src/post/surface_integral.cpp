// SPDX-License-Identifier: MPL-2.0
#include <plate/post/surface_integral.h>

#include <plate/elements/cubic_triangle.h>
#include <plate/elements/quadrature.h>

#include <Eigen/Geometry>

namespace plate
{

Eigen::VectorXd nodal_areas(const ShellMesh& mesh)
{
  Eigen::VectorXd area = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(mesh.nodes.size()));
  for (const auto& triangle : mesh.triangles)
  {
    Eigen::Matrix<double, 3, 10> X;
    for (int i = 0; i < 10; ++i)
      X.col(i) = mesh.nodes[static_cast<std::size_t>(triangle[static_cast<std::size_t>(i)])];
    for (const TrianglePoint& p : triangle_points())
    {
      const Eigen::Matrix<double, 3, 2> tangents = X * CubicTriangle::gradient(p.xi, p.eta);
      const double weight = p.weight * tangents.col(0).cross(tangents.col(1)).norm();
      const CubicTriangle::Vector N = CubicTriangle::shape(p.xi, p.eta);
      for (int i = 0; i < 10; ++i)
        area(triangle[static_cast<std::size_t>(i)]) += weight * N(i);
    }
  }
  return area;
}

Eigen::VectorXd normal_displacement(const ShellMesh& mesh, const Eigen::Matrix3Xd& u)
{
  Eigen::VectorXd w(u.cols());
  for (Eigen::Index i = 0; i < u.cols(); ++i)
    w(i) = mesh.normals[static_cast<std::size_t>(i)].dot(u.col(i));
  return w;
}

} // namespace plate
