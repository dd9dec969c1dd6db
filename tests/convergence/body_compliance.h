// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/body.h>
#include <plate/assembly/loads.h>
#include <plate/post/surface_integral.h>
#include <plate/solvers/statics.h>

namespace plate::test
{

/// A body at rest under a slow pressure of 1 Pa inside; its work is the volume by which the walls give way [m3/Pa].
inline StaticResult under_pressure(const Body& body, const BodySystem& assembled)
{
  Eigen::VectorXd load = Eigen::VectorXd::Zero(assembled.system.dofs.num_equations);
  for (std::size_t p = 0; p < body.parts.size(); ++p)
  {
    const ShellMesh& mesh = body.parts[p].model.mesh;
    const Eigen::VectorXd areas = nodal_areas(mesh);
    NodalUnknowns forces = no_load(mesh);
    for (Eigen::Index i = 0; i < areas.size(); ++i)
      forces.col(i).head<3>() = areas(i) * mesh.normals[static_cast<std::size_t>(i)];
    load += assembled.parts[p].from_body.transpose() * on_unknowns(assembled.parts[p].dofs, forces);
  }
  return solve_statics(assembled.system, balanced_by_inertia(assembled.system, load));
}

} // namespace plate::test
