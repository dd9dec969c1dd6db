// SPDX-License-Identifier: MPL-2.0
#include <plate/assembly/assemble.h>

#include "assembly_plan.h"

#include <plate/core/error.h>
#include <plate/core/parallel.h>
#include <plate/core/threads.h>
#include <plate/elements/cubic_triangle.h>
#include <plate/mesh/locate.h>

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <numeric>
#include <optional>
#include <utility>
#include <vector>

namespace plate
{

namespace
{

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

/// Mass and first moments, of what lies off the mid-surface too.
struct FirstMoments
{
  double mass = 0.0;                                // [kg]
  Eigen::Vector3d moment = Eigen::Vector3d::Zero(); // [kg m]

  FirstMoments() = default;

  FirstMoments(const ShellTriangleNodes& nodes, const ShellTriangle::MassMoments& element)
      : mass(element[0].sum()), moment(nodes.position * element[0].colwise().sum().transpose() +
                                       nodes.normal * element[1].colwise().sum().transpose())
  {
  }

  FirstMoments(double point_mass, const Eigen::Vector3d& position) : mass(point_mass), moment(point_mass * position) {}

  FirstMoments& operator+=(const FirstMoments& other)
  {
    mass += other.mass;
    moment += other.moment;
    return *this;
  }
};

/// Adds the elements to the values of two matrices of the pattern.
///
/// @return sum of the first moments
FirstMoments add_elements(const Model& model, const AssemblyPlan& plan, double* K, double* M)
{
  const std::vector<TriangleCover> covers = triangle_covers(model);
  std::vector<FirstMoments> moments(covers.size());
  const auto add = [&](const std::vector<int>& triangles, std::size_t from, std::size_t to)
  {
    ShellTriangle::Matrix Ke;
    ShellTriangle::Matrix Me;
    ShellTriangle::MassMoments mass;
    for (std::size_t k = from; k < to; ++k)
    {
      const auto t = static_cast<std::size_t>(triangles[k]);
      prefetch(plan, t, K, M);
      const ElementInput element = element_input(model, t, covers[t]);
      ShellTriangle::matrices(element.nodes, model.material, element.parts, Ke, mass);
      ShellTriangle::expand_mass(mass, element.nodes, model.material.axes, Me);
      scatter(plan, t, Ke, Me, K, M);
      moments[t] = FirstMoments(element.nodes, mass);
    }
  };
  for (const std::vector<int>& colour : plan.colours)
  {
    const bool shares_nodes = &colour == &plan.colours.back();
    in_parallel(colour.size(), shares_nodes ? 1 : num_threads(),
                [&](std::size_t from, std::size_t to) { add(colour, from, to); });
  }
  return std::accumulate(moments.begin(), moments.end(), FirstMoments(),
                         [](FirstMoments sum, const FirstMoments& part) { return sum += part; });
}

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
  moments += FirstMoments(mass.mass, position);
}

} // namespace

Assembler::Assembler() = default;
Assembler::~Assembler() = default;
Assembler::Assembler(Assembler&&) noexcept = default;
Assembler& Assembler::operator=(Assembler&&) noexcept = default;

System Assembler::assemble(const Model& model)
{
  check_model(model);
  DofMap dofs = number_unknowns(model);
  if (!plan_ || !plan_->fits(model.mesh, dofs))
    plan_ = std::make_unique<const AssemblyPlan>(make_plan(model.mesh, std::move(dofs)));
  System system = {.dofs = plan_->dofs, // built in place: Eigen's sparse matrices copy where they might move
                   .K = sparse_sum::zero_matrix(plan_->pattern),
                   .M = sparse_sum::zero_matrix(plan_->pattern),
                   .rigid_motions = {}};
  FirstMoments moments = add_elements(model, *plan_, system.K.valuePtr(), system.M.valuePtr());
  for (const PointMass& mass : model.masses)
    add_point_mass(model, system.dofs, mass, system.M, moments);
  system.typical_frequency_hz = typical_frequency(model);
  system.mass = moments.mass;
  system.centre_of_gravity = moments.moment / moments.mass;
  system.rigid_motions = rigid_motions(model, system.dofs);
  return system;
}

System assemble(const Model& model)
{
  return Assembler().assemble(model);
}

} // namespace plate
