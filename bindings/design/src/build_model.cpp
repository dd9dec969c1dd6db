// SPDX-License-Identifier: MPL-2.0
#include <plate/design/build_model.h>

#include <plate/meshes/mesher.h>

#include <cmath>
#include <cstddef>

namespace plate
{

namespace
{

PlyDirections directions_at_nodes(const PlyDirectionField& directions, const ShellMesh& mesh)
{
  PlyDirections out = {.ply = directions.ply, .double_angle = {}};
  for (const Eigen::Vector3d& node : mesh.nodes)
  {
    const double twice = 2.0 * direction_at(directions.field, node.head<2>()).in_radians();
    out.double_angle.emplace_back(std::cos(twice), std::sin(twice));
  }
  return out;
}

} // namespace

Model build_model(const Design& design, const PlanformMesh& planform)
{
  Model model{.mesh = lift(planform, design.geometry),
              .material = {.laminate = design.laminate},
              .bars = {},
              .supports = design.supports,
              .patches = design.patches,
              .masses = design.masses,
              .air_density = design.surroundings.air_density};
  for (const PlyDirectionField& directions : design.directions)
    model.directions.push_back(directions_at_nodes(directions, model.mesh));
  if (design.bar)
    model.bars.push_back(*design.bar);
  return model;
}

Model build_model(const Design& design)
{
  return build_model(design, mesh_planform(design.geometry, design.mesh));
}

void update_model(const Design& design, Model& model)
{
  const ThicknessField thickness(design.geometry.outline, design.geometry.thickness);
  for (std::size_t i = 0; i < model.mesh.nodes.size(); ++i)
    model.mesh.thickness[i] = thickness.at(model.mesh.nodes[i].head<2>());
  model.material.laminate = design.laminate;
  model.bars.clear();
  if (design.bar)
    model.bars.push_back(*design.bar);
  model.patches = design.patches;
  model.masses = design.masses;
  model.air_density = design.surroundings.air_density;
}

} // namespace plate
