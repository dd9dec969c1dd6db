// SPDX-License-Identifier: MPL-2.0
#include "body_result.h"

#include "progress.h"
#include "stopwatch.h"

#include <plate/assembly/nodal_unknowns.h>
#include <plate/core/error.h>
#include <plate/post/surface_integral.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace plate
{
namespace
{

/// Motion of the bridge's feet along z from unknowns of the body, (2, num_equations): rows as BridgeDrive.
Eigen::MatrixXd bridge_drives(const BodyDesign& design, const BodyModel& model, const BodySystem& system)
{
  const PartSystem& top = system.parts[BodyModel::top];
  const auto foot = [&](double side) -> Eigen::RowVectorXd
  {
    const Eigen::Vector2d at(design.top.setup.bridge_x, side * 0.5 * design.top.setup.bridge_feet);
    return displacement_rows(model.body.parts[BodyModel::top].model, top.dofs, at).row(2) * top.from_body;
  };
  const Eigen::RowVectorXd bass = foot(1.0);
  const Eigen::RowVectorXd treble = foot(-1.0);
  Eigen::MatrixXd drives(2, bass.size());
  drives.row(vertical) = 0.5 * (bass + treble);
  drives.row(rocking) = 0.5 * (bass - treble);
  return drives;
}

/// The cavity mode whose pressure is most like x.
Eigen::Index longitudinal_mode(const CavityMesh& cavity, const BodyModes& modes)
{
  const Eigen::VectorXd weight = nodal_areas(cavity.planform).cwiseProduct(cavity.top - cavity.back);
  Eigen::VectorXd x(weight.size());
  for (Eigen::Index i = 0; i < x.size(); ++i)
    x(i) = cavity.planform.nodes[static_cast<std::size_t>(i)].x();
  x.array() -= weight.dot(x) / weight.sum();
  Eigen::Index most = 0;
  (modes.cavity_shapes.transpose() * weight.cwiseProduct(x)).cwiseAbs().maxCoeff(&most);
  return most;
}

/// Mean motion of a part across the body in the modes shown, in the axes of the body, (count).
Eigen::VectorXd mean_across(const BodyResult& result, std::size_t part, Eigen::Index count)
{
  const BodyPart& wall = result.model.body.parts[part];
  const PartSystem& system = result.system.parts[part];
  const Eigen::VectorXd areas = nodal_areas(wall.model.mesh);
  Eigen::VectorXd out(count);
  for (Eigen::Index i = 0; i < count; ++i)
  {
    const Eigen::Matrix3Xd u = nodal_displacements(system.dofs, system.from_body * result.modes.shapes.col(i));
    out(i) = (wall.placement.linear() * (u * areas)).y() / areas.sum();
  }
  return out;
}

std::vector<BodyModeTraits> traits_of(const BodyResult& result, Eigen::Index count)
{
  const BodyModes& modes = result.modes;
  const CoupledModes& coupled = modes.coupled;
  const Eigen::Index along = longitudinal_mode(result.model.cavity, modes);
  const Eigen::VectorXd shear =
      mean_across(result, BodyModel::top, count) - mean_across(result, BodyModel::back, count);
  const PartSystem& top = result.system.parts[BodyModel::top];
  const PartSystem& back = result.system.parts[BodyModel::back];
  // Two masses that move against each other with the relative velocity v carry reduced mass times v^2 / 2.
  const double reduced_mass = top.mass * back.mass / (top.mass + back.mass);
  std::vector<BodyModeTraits> out;
  for (Eigen::Index i = 0; i < count; ++i)
  {
    const double f = coupled.frequencies_hz(i);
    const double outflow = coupled.outflow.col(i).sum();
    out.push_back({.frequency_hz = f,
                   .air_share = energy_share(coupled, coupled.share_names.size() - 1, static_cast<std::size_t>(i)),
                   .outflow = outflow,
                   .longitudinal_share = std::pow(modes.cavity_hz(along) * coupled.cavity(along, i) / f, 2),
                   .wall_volume = coupled.volume_change(i) - outflow,
                   .shear_share = reduced_mass * shear(i) * shear(i)});
  }
  return out;
}

} // namespace

BodyResult compute_body(BodyDesign design, int count)
{
  Progress progress;
  progress.show("meshing");
  const Stopwatch stage;
  BodyModel model = build_body(design);
  const double seconds = stage.seconds();
  BodyResult result = compute_body(std::move(design), std::move(model), count, 0);
  result.times.mesh = seconds;
  result.times.total += seconds;
  return result;
}

BodyResult compute_body(BodyDesign design, BodyModel model, int count, int refined_modes)
{
  const Stopwatch whole;
  BodyTimes times;
  Progress progress;

  progress.show("assembling");
  Stopwatch stage;
  BodySystem system = assemble(model.body);
  times.assemble = stage.seconds();

  BodyOptions options;
  options.structure_modes = std::max(options.structure_modes, 2 * count + 60);
  options.refined_modes = refined_modes;
  progress.show(message("solving for ", options.structure_modes, " modes with ", system.system.dofs.num_equations,
                        " unknowns, and the air"));
  stage = Stopwatch();
  const BodyAir air = body_air(model, design);
  BodyModes modes = solve_body_modes(model.body, system, air, bridge_drives(design, model, system), options);
  times.solve = stage.seconds();

  BodyResult result = {.design = std::move(design),
                       .model = std::move(model),
                       .system = std::move(system),
                       .air = air.air,
                       .modes = std::move(modes),
                       .traits = {},
                       .names = {},
                       .bridge = {},
                       .times = {}};
  result.bridge = response_modes(result.modes.coupled, result.modes.drives);
  result.traits = traits_of(result, count);
  result.names = name_body_modes(result.traits, result.modes.cavity_hz(0));
  times.total = whole.seconds();
  result.times = times;
  return result;
}

double energy_share(const CoupledModes& modes, std::size_t part, std::size_t mode)
{
  const auto row = static_cast<Eigen::Index>(part);
  const auto column = static_cast<Eigen::Index>(mode);
  return 0.5 * (modes.strain_share(row, column) + modes.kinetic_share(row, column));
}

std::optional<BodyModeName> name_of(const BodyResult& result, std::size_t mode)
{
  for (const BodyModeName& name : result.names)
    if (name.mode == mode)
      return name;
  return {};
}

Eigen::MatrixXd outward_shapes(const BodyResult& result, std::size_t part)
{
  const PartSystem& system = result.system.parts[part];
  return normal_displacements(result.model.body.parts[part].model.mesh, system.dofs,
                              system.from_body *
                                  result.modes.shapes.leftCols(static_cast<Eigen::Index>(result.traits.size())));
}

} // namespace plate
