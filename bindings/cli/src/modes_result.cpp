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
#include <plate/solvers/mode_errors.h>

#include <utility>

namespace plate
{
namespace
{

/// Error bars; in air those of the modes in vacuo, as parts of the frequencies: the error of the shapes is the same.
Eigen::VectorXd error_bars(const Model& model, const System& system, const ModalResult& modal)
{
  if (model.air_density == 0.0)
    return mode_errors(model, system, modal);
  const ModalResult in_vacuo = solve_modes(system, {.num_modes = static_cast<int>(modal.frequencies_hz.size())});
  return mode_errors(model, system, in_vacuo).cwiseQuotient(in_vacuo.frequencies_hz).cwiseProduct(modal.frequencies_hz);
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

  progress.show("estimating errors");
  stage = Stopwatch();
  Eigen::VectorXd errors = error_bars(model, system, modal);
  times.errors = stage.seconds();

  Eigen::VectorXd losses = mode_losses(model, system.dofs, modal.shapes);
  Eigen::MatrixXd normal = normal_displacements(model.mesh, system.dofs, modal.shapes);
  std::vector<std::string> names = name_modes(model.mesh, normal);
  times.total = whole.seconds();
  return {.design = std::move(design),
          .model = std::move(model),
          .mesh = mesh_quality(planform),
          .size = planform.options.size,
          .system = std::move(system),
          .modal = std::move(modal),
          .errors_hz = std::move(errors),
          .losses = std::move(losses),
          .normal_shapes = std::move(normal),
          .names = std::move(names),
          .times = times};
}

} // namespace plate
