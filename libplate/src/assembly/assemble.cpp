// SPDX-License-Identifier: MPL-2.0
#include <plate/assembly/assemble.h>

#include "sparse_sum.h"

#include <plate/core/error.h>
#include <plate/elements/cubic_triangle.h>
#include <plate/mesh/locate.h>

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <optional>

namespace plate
{

namespace
{

using ElementMatrix = ShellTriangle::Matrix;
using ElementEquations = std::array<int, ShellTriangle::num_dofs>;

ElementEquations element_equations(const ShellMesh& mesh, const DofMap& dofs, std::size_t triangle)
{
  ElementEquations equations;
  std::size_t k = 0;
  for (const int node : mesh.triangles[triangle])
    for (const int equation : dofs.equation[static_cast<std::size_t>(node)])
      equations[k++] = equation;
  return equations;
}

/// Adds the lower triangles of two element matrices to matrices of one pattern.
void scatter(const ElementEquations& equations, const ElementMatrix& Ke, const ElementMatrix& Me, SparseMatrix& K,
             SparseMatrix& M)
{
  sparse_sum::for_each_slot(K, equations,
                            [&](std::ptrdiff_t slot, int r, int c)
                            {
                              K.valuePtr()[slot] += Ke(r, c);
                              M.valuePtr()[slot] += Me(r, c);
                            });
}

/// Lowest bending frequency of a flat free strip of the plate's largest dimension: 22.4 / (2 pi L^2) sqrt(D/m).
double typical_frequency(const Model& model)
{
  Eigen::AlignedBox3d box;
  double thickness = 0.0;
  for (const Eigen::Vector3d& node : model.mesh.nodes)
    box.extend(node);
  for (const double t : model.mesh.thickness)
    thickness += t / static_cast<double>(model.mesh.thickness.size());
  const MaterialAxes& axes = model.material.axes;
  const SectionStiffness section =
      section_stiffness(model.material.laminate, thickness, shell_frame(axes.up, axes), axes);
  const double D = std::sqrt(section.P[2](0, 0) * section.P[2](1, 1));
  const double m = section_mass(model.material.laminate, thickness)[0];
  return 22.4 / (2.0 * std::numbers::pi * box.diagonal().squaredNorm()) * std::sqrt(D / m);
}

/// Mass and first moments from the momentum of rigid motions, so that what lies off the mid-surface counts too.
struct FirstMoments
{
  double mass = 0.0;                                // [kg]
  Eigen::Vector3d moment = Eigen::Vector3d::Zero(); // [kg m]

  void add(const ElementMatrix& Me, const ShellTriangle::RigidMotions& rigid)
  {
    const Eigen::Matrix<double, 6, 6> momentum = rigid.transpose() * Me * rigid;
    mass += momentum(0, 0);
    for (int k = 0; k < 3; ++k) // a turn about axis k+2 moves a point by its coordinate k along axis k+1
      moment(k) += momentum((k + 1) % 3, 3 + (k + 2) % 3);
  }

  void add(double point_mass, const Eigen::Vector3d& position)
  {
    mass += point_mass;
    moment += point_mass * position;
  }
};

/// Adds a body that moves with one point of the mid-surface.
void add_point_mass(const Model& model, const DofMap& dofs, const PointMass& mass, SparseMatrix& M,
                    FirstMoments& moments)
{
  const std::optional<MeshPoint> point = locate(model.mesh, mass.at);
  if (!point)
    throw InvalidInput(message("a mass of ", mass.mass * 1e3, " g at x = ", mass.at.x() * 1e3,
                               ", y = ", mass.at.y() * 1e3, " mm lies beside the plate or in a hole"));
  const CubicTriangle::Vector N = CubicTriangle::shape(point->xi, point->eta);
  const auto& nodes = model.mesh.triangles[point->triangle];
  Eigen::Vector3d position = Eigen::Vector3d::Zero();
  for (int a = 0; a < CubicTriangle::num_nodes; ++a)
  {
    const auto node_a = static_cast<std::size_t>(nodes[static_cast<std::size_t>(a)]);
    position += N(a) * model.mesh.nodes[node_a];
    for (int b = 0; b < CubicTriangle::num_nodes; ++b)
      for (std::size_t direction = 0; direction < 3; ++direction)
      {
        const int row = dofs.equation[node_a][direction];
        const int column = dofs.equation[static_cast<std::size_t>(nodes[static_cast<std::size_t>(b)])][direction];
        if (column != DofMap::held && row >= column)
          M.coeffRef(row, column) += mass.mass * N(a) * N(b);
      }
  }
  moments.add(mass.mass, position);
}

} // namespace

System assemble(const Model& model)
{
  check_model(model);
  System system;
  system.dofs = number_unknowns(model);
  system.K = sparse_sum::zero_matrix(unknowns_by_node(system.dofs),
                                     sparse_sum::neighbours(model.mesh.nodes.size(), model.mesh.triangles));
  system.M = system.K;
  const std::vector<TriangleCover> covers = triangle_covers(model);
  FirstMoments moments;
  ElementMatrix Ke;
  ElementMatrix Me;
  for (std::size_t t = 0; t < model.mesh.triangles.size(); ++t)
  {
    const ElementInput element = element_input(model, t, covers[t]);
    ShellTriangle::stiffness(element.nodes, model.material, element.parts, Ke);
    ShellTriangle::mass(element.nodes, model.material, element.parts, Me);
    scatter(element_equations(model.mesh, system.dofs, t), Ke, Me, system.K, system.M);
    moments.add(Me, ShellTriangle::rigid_motions(element.nodes, model.material.axes));
  }
  for (const PointMass& mass : model.masses)
    add_point_mass(model, system.dofs, mass, system.M, moments);
  system.typical_frequency_hz = typical_frequency(model);
  system.mass = moments.mass;
  system.centre_of_gravity = moments.moment / moments.mass;
  system.rigid_motions = rigid_motions(model, system.dofs);
  return system;
}

} // namespace plate
