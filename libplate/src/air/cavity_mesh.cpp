// SPDX-License-Identifier: MPL-2.0
#include <plate/air/cavity_mesh.h>

#include <plate/core/error.h>
#include <plate/elements/cubic_triangle.h>
#include <plate/mesh/locate.h>

#include <algorithm>
#include <limits>

namespace plate
{
namespace
{

constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

double value_at(const ShellMesh& mesh, const MeshPoint& place, const Eigen::VectorXd& nodal)
{
  const CubicTriangle::Vector N = CubicTriangle::shape(place.xi, place.eta);
  double value = 0.0;
  for (std::size_t i = 0; i < ShellMesh::nodes_per_triangle; ++i)
    value += N(static_cast<Eigen::Index>(i)) * nodal(mesh.triangles[place.triangle][i]);
  return value;
}

/// Height of the inner face at the nodes of a plate, above (+1) or below (-1) its mid-surface.
Eigen::VectorXd inner_face(const ShellMesh& plate, double side)
{
  Eigen::VectorXd z(static_cast<Eigen::Index>(plate.nodes.size()));
  for (std::size_t i = 0; i < plate.nodes.size(); ++i)
    z(static_cast<Eigen::Index>(i)) =
        plate.nodes[i].z() + side * 0.5 * plate.thickness[i] / std::abs(plate.normals[i].z());
  return z;
}

/// Gives unknown nodes the mean of the known ones they share triangles with, ring by ring.
void fill_from_neighbours(const ShellMesh& planform, Eigen::VectorXd& z)
{
  while (z.hasNaN())
  {
    Eigen::VectorXd sum = Eigen::VectorXd::Zero(z.size());
    Eigen::VectorXd count = Eigen::VectorXd::Zero(z.size());
    for (const auto& triangle : planform.triangles)
      for (const int from : triangle)
        for (const int to : triangle)
          if (!std::isnan(z(from)))
          {
            sum(to) += z(from);
            count(to) += 1.0;
          }
    for (Eigen::Index i = 0; i < z.size(); ++i)
      if (std::isnan(z(i)) && count(i) > 0.0)
        z(i) = sum(i) / count(i);
  }
}

Eigen::VectorXd heights_over(const ShellMesh& planform, const ShellMesh& plate, double side)
{
  const PointLocator locator(plate);
  const Eigen::VectorXd face = inner_face(plate, side);
  Eigen::VectorXd z(static_cast<Eigen::Index>(planform.nodes.size()));
  for (std::size_t i = 0; i < planform.nodes.size(); ++i)
  {
    const auto place = locator.locate(planform.nodes[i].head<2>());
    z(static_cast<Eigen::Index>(i)) = place ? value_at(plate, *place, face) : unknown;
  }
  if (z.array().isNaN().all())
    throw InvalidInput("cavity_between: a plate lies over none of the nodes of the planform; give all three meshes in "
                       "the axes of the body");
  fill_from_neighbours(planform, z);
  return z;
}

} // namespace

void check_cavity(const CavityMesh& mesh)
{
  const auto num_nodes = static_cast<Eigen::Index>(mesh.planform.nodes.size());
  if (mesh.back.size() != num_nodes || mesh.top.size() != num_nodes || num_nodes == 0)
    throw InvalidInput(message("cavity: there must be a height of back and top for each of ", num_nodes, " nodes; got ",
                               mesh.back.size(), " and ", mesh.top.size()));
  const Eigen::VectorXd height = mesh.top - mesh.back;
  Eigen::Index lowest = 0;
  height.minCoeff(&lowest);
  if (!(height.allFinite() && height(lowest) >= -1e-9 * height.maxCoeff() && height.maxCoeff() > 0.0))
    throw InvalidInput(message("cavity: the top must lie on the back or above it, and not on it everywhere; got a "
                               "height of ",
                               height(lowest), " m at node ", lowest,
                               ", x = ", mesh.planform.nodes[static_cast<std::size_t>(lowest)].x(),
                               " m, y = ", mesh.planform.nodes[static_cast<std::size_t>(lowest)].y(),
                               " m; do the plates cross, or are they exchanged?"));
}

CavityMesh cavity_between(ShellMesh planform, const ShellMesh& top, const ShellMesh& back)
{
  CavityMesh cavity = {.planform = std::move(planform), .back = {}, .top = {}};
  cavity.top = heights_over(cavity.planform, top, -1.0);
  cavity.back = heights_over(cavity.planform, back, 1.0);
  check_cavity(cavity);
  return cavity;
}

} // namespace plate
