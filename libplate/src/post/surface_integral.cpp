// SPDX-License-Identifier: MPL-2.0
#include <plate/post/surface_integral.h>

#include "mesh/triangle_nodes.h"

#include <plate/elements/quadrature.h>

#include <Eigen/Geometry>

namespace plate
{

CubicTriangle::Vector nodal_areas(const ShellMesh& mesh, std::size_t triangle)
{
  const Eigen::Matrix<double, 3, CubicTriangle::num_nodes> X = nodes_of(mesh, triangle);
  CubicTriangle::Vector areas = CubicTriangle::Vector::Zero();
  for (const TrianglePoint& p : triangle_points())
  {
    const Eigen::Matrix<double, 3, 2> tangents = X * CubicTriangle::gradient(p.xi, p.eta);
    areas += p.weight * tangents.col(0).cross(tangents.col(1)).norm() * CubicTriangle::shape(p.xi, p.eta);
  }
  return areas;
}

Eigen::VectorXd nodal_areas(const ShellMesh& mesh)
{
  Eigen::VectorXd area = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(mesh.nodes.size()));
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
  {
    const CubicTriangle::Vector part = nodal_areas(mesh, t);
    for (int i = 0; i < 10; ++i)
      area(mesh.triangles[t][static_cast<std::size_t>(i)]) += part(i);
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

Eigen::MatrixXd normal_displacements(const ShellMesh& mesh, const DofMap& dofs, const Eigen::MatrixXd& unknowns)
{
  Eigen::MatrixXd w(static_cast<Eigen::Index>(mesh.nodes.size()), unknowns.cols());
  for (Eigen::Index k = 0; k < unknowns.cols(); ++k)
    w.col(k) = normal_displacement(mesh, nodal_displacements(dofs, unknowns.col(k)));
  return w;
}

} // namespace plate
