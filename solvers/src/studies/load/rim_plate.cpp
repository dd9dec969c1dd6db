// SPDX-License-Identifier: MPL-2.0
#include "rim_plate.h"

#include "load_places.h"

#include <plate/core/error.h>

#include <utility>

namespace plate
{

namespace
{

const Eigen::Vector3d inward(0.0, 0.0, -1.0);

/// The plate on its rim, with its factorised stiffness.
class RimPlate
{
public:
  RimPlate(const Model& model, const LoadSetup& setup)
      : model_(on_rim(model, setup.rim)), posts_(setup.posts), system_(assemble_with_posts()), solver_(system_)
  {
  }

  [[nodiscard]] const Model& model() const { return model_; }
  [[nodiscard]] const System& system() const { return system_; }
  [[nodiscard]] const StaticSolver& solver() const { return solver_; }

  [[nodiscard]] LoadCase solve(LoadCase load, const NodalUnknowns& forces) const
  {
    load.evidence = solver_.solve(on_unknowns(system_.dofs, forces));
    load.displacements = at_nodes(system_.dofs, load.evidence.x);
    load.balance_error = support_balance(model_, system_.dofs, load.displacements, forces, posts_).error;
    return load;
  }

  /// Of the nodes the one that gives most under a force along z.
  [[nodiscard]] std::size_t softest(const std::vector<std::size_t>& nodes) const
  {
    Eigen::MatrixXd unit = Eigen::MatrixXd::Zero(system_.dofs.num_equations, static_cast<Eigen::Index>(nodes.size()));
    for (std::size_t i = 0; i < nodes.size(); ++i)
      if (const int equation = system_.dofs.equation[nodes[i]][2]; equation != DofMap::held)
        unit(equation, static_cast<Eigen::Index>(i)) = 1.0;
    const Eigen::VectorXd compliance = solver_.compliances(unit);
    Eigen::Index most = 0;
    compliance.maxCoeff(&most);
    return nodes[static_cast<std::size_t>(most)];
  }

private:
  static Model on_rim(const Model& model, EdgeSupport rim)
  {
    Model held = model;
    if (held.supports.empty())
      for (const EdgeGroup& group : held.mesh.boundary)
        if (!is_hole(group))
          held.supports.push_back({.group = group.name, .support = rim});
    return held;
  }

  [[nodiscard]] System assemble_with_posts() const
  {
    System system = assemble(model_);
    for (const SupportBed& post : posts_)
      add_support(model_.mesh, post, system);
    return system;
  }

  Model model_;
  std::vector<SupportBed> posts_;
  System system_;
  StaticSolver solver_;
};

std::array<PlanformRegion, 2> feet_of(const StringLoad& strings)
{
  return {EllipseRegion{.centre = strings.feet[0], .axes = strings.foot},
          EllipseRegion{.centre = strings.feet[1], .axes = strings.foot}};
}

LoadCase strings_case(const RimPlate& plate, const StringLoad& strings)
{
  NodalUnknowns forces = no_load(plate.model().mesh);
  for (const PlanformRegion& foot : feet_of(strings))
    add_load(plate.model().mesh, AreaForce{.region = foot, .force = 0.5 * strings.downforce * inward}, forces);
  return plate.solve({.name = "strings", .at = 0.5 * (strings.feet[0] + strings.feet[1]), .force = strings.downforce},
                     forces);
}

/// A press or knock through a round area.
LoadCase press_case(const RimPlate& plate, LoadCase load, double diameter)
{
  NodalUnknowns forces = no_load(plate.model().mesh);
  add_load(plate.model().mesh, AreaForce{.region = disc(load.at, diameter), .force = load.force * inward}, forces);
  return plate.solve(std::move(load), forces);
}

/// Mean displacement along z over an area: the work of a unit force spread over it.
double mean_deflection(const ShellMesh& mesh, const PlanformRegion& region, const NodalUnknowns& u)
{
  NodalUnknowns unit = no_load(mesh);
  add_load(mesh, AreaForce{.region = region, .force = {0.0, 0.0, 1.0}}, unit);
  return unit.cwiseProduct(u).sum();
}

void add_stability(const RimPlate& plate, const NodalUnknowns& loaded, int num_modes, LoadStudy& study)
{
  const SparseMatrix KG = geometric_stiffness(plate.model(), plate.system().dofs, loaded);
  study.buckling = solve_buckling(plate.solver(), KG, {.num_modes = 2});
  if (study.buckling.status != Status::converged)
    throw NumericalFailure("the buckling factors did not converge; a finer mesh may help");
  if (num_modes == 0)
    return;
  const ModalOptions options = {.num_modes = num_modes};
  ModalSolver modal; // both matrices have one pattern
  study.frequencies_hz = modal.solve(plate.system(), options).frequencies_hz;
  const bool is_stable = study.buckling.factors.size() == 0 || study.buckling.factors(0) > 1.0;
  if (is_stable)
    study.loaded_frequencies_hz = modal.solve(prestressed(plate.system(), KG), options).frequencies_hz;
}

} // namespace

void add_rim_cases(const Model& model, const LoadSetup& setup, LoadStudy& study)
{
  constexpr int nodes_tried = 24; // of each hole: on a usual f-hole a wing's end is found to within 5 mm
  const RimPlate plate(model, setup);
  const ShellMesh& mesh = model.mesh;
  study.cases.push_back(strings_case(plate, setup.strings));
  const NodalUnknowns loaded = study.cases.back().displacements;
  for (const PlanformRegion& foot : feet_of(setup.strings))
    study.foot_deflections.push_back(mean_deflection(mesh, foot, loaded));
  for (const SupportBed& post : setup.posts)
    study.post_forces.push_back(support_forces(mesh, post, loaded).row(2).sum());
  const Handling& handling = setup.handling;
  study.cases.push_back(
      press_case(plate, {.name = "thumb", .at = handling.thumb_at, .force = handling.thumb}, handling.fingertip));
  if (const std::vector<std::size_t> nodes = hole_nodes(mesh, nodes_tried); !nodes.empty())
    study.cases.push_back(
        press_case(plate, {.name = "wing", .at = planform_place(mesh, plate.softest(nodes)), .force = handling.knock},
                   handling.knuckle));
  add_stability(plate, loaded, setup.num_modes, study);
}

} // namespace plate
