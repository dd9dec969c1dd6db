// SPDX-License-Identifier: MPL-2.0
#include <plate/design/build_model.h>

#include <plate/meshes/mesher.h>

namespace plate
{

Model build_model(const Design& design, const PlanformMesh& planform)
{
  Model model{.mesh = lift(planform, design.geometry),
              .material = {.laminate = design.laminate},
              .bars = {},
              .supports = design.supports,
              .patches = design.patches,
              .masses = design.masses};
  if (design.bar)
    model.bars.push_back(*design.bar);
  return model;
}

Model build_model(const Design& design)
{
  return build_model(design, mesh_planform(design.geometry, design.mesh));
}

} // namespace plate
