// SPDX-License-Identifier: MPL-2.0
#include <plate/assembly/loads.h>

#include "mesh/triangle_nodes.h"

#include <plate/core/error.h>
#include <plate/elements/cubic_triangle.h>
#include <plate/elements/quadrature.h>
#include <plate/mesh/locate.h>
#include <plate/mesh/region_places.h>

#include <Eigen/Geometry>
#include <Eigen/SVD>

#include <cmath>
#include <optional>

namespace plate
{

namespace
{

constexpr Eigen::Index along_z = 2;

void add_force(const ShellMesh& mesh, const MeshPoint& point, const Eigen::Vector3d& force, NodalUnknowns& forces)
{
  const CubicTriangle::Vector N = CubicTriangle::shape(point.xi, point.eta);
  Eigen::Index i = 0;
  for (const int node : mesh.triangles[point.triangle])
    forces.col(node).head<3>() += N(i++) * force;
}

void add_forces(const ShellMesh& mesh, const std::vector<SharedPlace>& places, const Eigen::Vector3d& force,
                NodalUnknowns& forces)
{
  for (const SharedPlace& place : places)
    add_force(mesh, place.point, place.share * force, forces);
}

/// Combinations of motions that a support does not feel.
///
/// @param felt  what each pair of them does in the support
Eigen::MatrixXd motions_left(const Eigen::MatrixXd& motions, const Eigen::MatrixXd& felt)
{
  if (felt.isZero(0.0))
    return motions;
  const Eigen::JacobiSVD<Eigen::MatrixXd> svd(felt, Eigen::ComputeFullV);
  const auto rank = (svd.singularValues().array() > 1e-10 * svd.singularValues()(0)).count();
  return motions * svd.matrixV().rightCols(motions.cols() - rank);
}

} // namespace

double string_downforce(double tension, Angle deflection)
{
  return 2.0 * tension * std::sin(0.5 * deflection.in_radians());
}

NodalUnknowns no_load(const ShellMesh& mesh)
{
  return NodalUnknowns::Zero(DofMap::dofs_per_node, static_cast<Eigen::Index>(mesh.nodes.size()));
}

void add_load(const ShellMesh& mesh, const PointForce& load, NodalUnknowns& forces)
{
  const std::optional<MeshPoint> point = locate(mesh, load.at);
  if (!point)
    throw InvalidInput(message("a force at x = ", load.at.x() * 1e3, ", y = ", load.at.y() * 1e3,
                               " mm lies beside the plate or in a hole; move it onto the plate"));
  add_force(mesh, *point, load.force, forces);
}

void add_load(const ShellMesh& mesh, const AreaForce& load, NodalUnknowns& forces)
{
  add_forces(mesh, places_in(mesh, load.region), load.force, forces);
}

void add_load(const ShellMesh& mesh, const LineForce& load, NodalUnknowns& forces)
{
  add_forces(mesh, places_along(mesh, load.from, load.to), load.force, forces);
}

void add_surface_load(const Model& model, const std::function<Eigen::Vector3d(const Eigen::Vector3d&)>& pressure,
                      NodalUnknowns& forces)
{
  const ShellMesh& mesh = model.mesh;
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
  {
    const Eigen::Matrix<double, 3, CubicTriangle::num_nodes> position = nodes_of(mesh, t);
    for (const TrianglePoint& p : triangle_points())
    {
      const Eigen::Matrix<double, 3, 2> tangents = position * CubicTriangle::gradient(p.xi, p.eta);
      const CubicTriangle::Vector N = CubicTriangle::shape(p.xi, p.eta);
      const double area = p.weight * tangents.col(0).cross(tangents.col(1)).norm();
      const Eigen::Vector3d force = area * pressure(position * N);
      Eigen::Index i = 0;
      for (const int node : mesh.triangles[t])
        forces.col(node).head<3>() += N(i++) * force;
    }
  }
}

void add_support(const ShellMesh& mesh, const SupportBed& bed, System& system)
{
  if (!(bed.stiffness > 0.0 && std::isfinite(bed.stiffness)))
    throw InvalidInput(message("the stiffness of a support must be positive and finite; got ", bed.stiffness, " N/m"));
  const Eigen::VectorXd scale = system.rigid_motions.colwise().norm();
  const Eigen::MatrixXd rigid = system.rigid_motions * scale.cwiseInverse().asDiagonal();
  Eigen::MatrixXd felt = Eigen::MatrixXd::Zero(rigid.cols(), rigid.cols());
  for (const SharedPlace& place : places_in(mesh, bed.region))
  {
    const CubicTriangle::Vector N = CubicTriangle::shape(place.point.xi, place.point.eta);
    const auto& nodes = mesh.triangles[place.point.triangle];
    Eigen::RowVectorXd w = Eigen::RowVectorXd::Zero(rigid.cols());
    const auto equation = [&](int i)
    { return system.dofs.equation[static_cast<std::size_t>(nodes[static_cast<std::size_t>(i)])][along_z]; };
    for (int a = 0; a < CubicTriangle::num_nodes; ++a)
    {
      if (equation(a) == DofMap::held)
        continue;
      if (rigid.cols() > 0) // the rows of a matrix without columns have no place in memory
        w += N(a) * rigid.row(equation(a));
      for (int b = 0; b < CubicTriangle::num_nodes; ++b)
        if (equation(b) != DofMap::held && equation(a) >= equation(b))
          system.K.coeffRef(equation(a), equation(b)) += place.share * bed.stiffness * N(a) * N(b);
    }
    felt += w.transpose() * w;
  }
  system.rigid_motions = motions_left(rigid, felt);
}

NodalUnknowns support_forces(const ShellMesh& mesh, const SupportBed& bed, const NodalUnknowns& displacements)
{
  NodalUnknowns forces = no_load(mesh);
  for (const SharedPlace& place : places_in(mesh, bed.region))
  {
    const CubicTriangle::Vector N = CubicTriangle::shape(place.point.xi, place.point.eta);
    double w = 0.0;
    Eigen::Index i = 0;
    for (const int node : mesh.triangles[place.point.triangle])
      w += N(i++) * displacements(along_z, node);
    add_force(mesh, place.point, {0.0, 0.0, -place.share * bed.stiffness * w}, forces);
  }
  return forces;
}

} // namespace plate
