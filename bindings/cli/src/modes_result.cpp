// SPDX-License-Identifier: MPL-2.0
#include "modes_result.h"

#include "progress.h"
#include "stopwatch.h"

#include <plate/core/error.h>
#include <plate/design/build_model.h>
#include <plate/meshes/mesher.h>
#include <plate/post/mode_loss.h>
#include <plate/post/mode_names.h>
#include <plate/post/surface_integral.h>
#include <plate/solvers/air_modes.h>

#include <utility>

namespace plate
{
namespace
{

Eigen::MatrixXd normal_shapes(const ShellMesh& mesh, const DofMap& dofs, const Eigen::MatrixXd& shapes)
{
  Eigen::MatrixXd out(static_cast<Eigen::Index>(mesh.nodes.size()), shapes.cols());
  for (Eigen::Index mode = 0; mode < shapes.cols(); ++mode)
    out.col(mode) = normal_displacement(mesh, nodal_displacements(dofs, shapes.col(mode)));
  return out;
}

} // namespace

ModesResult compute_modes(Design design, int count)
{
  const Stopwatch whole;
  StageTimes times;
  Progress progress;

  progress.show("meshing");
  Stopwatch stage;
  const PlanformMesh planform = mesh_planform(design.geometry, design.mesh);
  Model model = build_model(design, planform);
  times.mesh = stage.seconds();

  progress.show("assembling");
  stage = Stopwatch();
  System system = assemble(model);
  times.assemble = stage.seconds();

  progress.show(message("solving for ", count, " modes with ", system.dofs.num_equations, " unknowns"));
  stage = Stopwatch();
  ModalResult modal = solve_modes(model, system, {.num_modes = count});
  times.solve = stage.seconds();
  if (modal.status != Status::converged)
    throw NumericalFailure(message("the modes did not converge: ", modal.summary()));

  Eigen::VectorXd losses = mode_losses(model, system.dofs, modal.shapes);
  Eigen::MatrixXd normal = normal_shapes(model.mesh, system.dofs, modal.shapes);
  std::vector<std::string> names = name_modes(model.mesh, normal);
  times.total = whole.seconds();
  return {.design = std::move(design),
          .model = std::move(model),
          .mesh = mesh_quality(planform),
          .system = std::move(system),
          .modal = std::move(modal),
          .losses = std::move(losses),
          .normal_shapes = std::move(normal),
          .names = std::move(names),
          .times = times};
}

} // namespace plate
