// SPDX-License-Identifier: MPL-2.0
// Plates on boxes of air, and boxes of two plates with a hole.
#include "modal_values.h"
#include "simple_support.h"

#include <plate/air/cavity_walls.h>
#include <plate/solvers/coupled_modes.h>
#include <plate/validation/sample_cavities.h>
#include <plate/validation/sample_models.h>

#include <cmath>
#include <string>
#include <vector>

namespace plate::validation
{
namespace
{

/// A plate of a box: thin-plate theory, so the transverse shear moduli are very large.
struct BoxPlate
{
  double E1, E2, G12; ///< [Pa]
  double nu12;
  double density;   ///< [kg/m3]
  double thickness; ///< [m]
};

constexpr BoxPlate spruce = {
    .E1 = 12e9, .E2 = 0.8e9, .G12 = 0.75e9, .nu12 = 0.38, .density = 420.0, .thickness = 2.8e-3};
constexpr BoxPlate maple = {.E1 = 11e9, .E2 = 1.6e9, .G12 = 1.2e9, .nu12 = 0.40, .density = 600.0, .thickness = 3.5e-3};
constexpr BoxPlate stiff_spruce = {
    .E1 = 120e9, .E2 = 16e9, .G12 = 8e9, .nu12 = 0.35, .density = 420.0, .thickness = 2.8e-3};
constexpr BoxPlate stiff_maple = {
    .E1 = 110e9, .E2 = 20e9, .G12 = 10e9, .nu12 = 0.35, .density = 600.0, .thickness = 3.5e-3};
constexpr BoxPlate metal = {
    .E1 = 104e9, .E2 = 104e9, .G12 = 104e9 / 2.74, .nu12 = 0.37, .density = 8500.0, .thickness = 0.9144e-3};

/// Box about the origin of x and y, on z = 0, and how finely it is cut.
struct Box
{
  double length, width, depth; ///< [m]
  int cells_x, cells_y;
  int degree; ///< of the pressure through the depth
};

constexpr Box wooden_box = {.length = 0.35, .width = 0.2, .depth = 0.035, .cells_x = 20, .cells_y = 12, .degree = 3};

CavityMesh cavity_of(const Box& box)
{
  return cavity_over(even_rectangle(box.length, box.width, box.cells_x, box.cells_y, 1e-3),
                     [&](double, double) { return box.depth; });
}

/// Modes of one plate, hinged all round, with what they do to the air.
struct PlateModes
{
  Eigen::VectorXd frequencies_hz;
  Eigen::MatrixXd flow;
};

PlateModes plate_modes(const BoxPlate& plate, const Box& box, const CavitySpace& space, WallSide side)
{
  const double rigid_shear = 2.0 * plate.E1; // takes 0.02 % at most, and elements of this size do not lock yet [Pa]
  const Material material = {.name = "plate of a box",
                             .elastic = {.E1 = plate.E1,
                                         .E2 = plate.E2,
                                         .E3 = plate.E2,
                                         .G12 = plate.G12,
                                         .G13 = rigid_shear,
                                         .G23 = rigid_shear,
                                         .nu12 = plate.nu12,
                                         .nu13 = 0.0,
                                         .nu23 = 0.0},
                             .density = plate.density};
  const Model model = plate_model(even_rectangle(box.length, box.width, box.cells_x, box.cells_y, plate.thickness),
                                  solid(material, plate.thickness));
  const HeldSystem held = held_system(model, bending_only(box.length, box.width));
  const ModalResult modes = checked_modes(held.system, 60);
  const Eigen::MatrixXd unknowns = held.to_model * modes.shapes;
  const auto num_nodes = static_cast<Eigen::Index>(model.mesh.nodes.size());
  Eigen::MatrixXd u(3 * num_nodes, unknowns.cols());
  for (Eigen::Index node = 0; node < num_nodes; ++node)
    u.middleRows(3 * node, 3) = unknowns.middleRows(DofMap::dofs_per_node * node, 3);
  return {.frequencies_hz = modes.frequencies_hz, .flow = wall_flow(space, {.mesh = &model.mesh, .side = side}, u)};
}

/// The plates of a box as one structure; flows side by side.
PlateModes joined(const PlateModes& a, const PlateModes& b)
{
  PlateModes both = {.frequencies_hz = Eigen::VectorXd(a.frequencies_hz.size() + b.frequencies_hz.size()),
                     .flow = Eigen::MatrixXd(a.flow.rows(), a.flow.cols() + b.flow.cols())};
  both.frequencies_hz << a.frequencies_hz, b.frequencies_hz;
  both.flow << a.flow, b.flow;
  return both;
}

/// Outflow of 1 through the patch y -30...30 mm, z 10...25 mm of the rib at x-, uniform.
Eigen::VectorXd patch_flow(const Box& box, const CavitySpace& space)
{
  Eigen::VectorXd flow = Eigen::VectorXd::Zero(space.num_unknowns());
  constexpr int steps_y = 120;
  constexpr int steps_z = 30;
  for (int i = 0; i < steps_y; ++i)
    for (int j = 0; j < steps_z; ++j)
    {
      const Eigen::Vector3d at(-0.5 * box.length, -0.030 + 0.060 * (i + 0.5) / steps_y,
                               0.010 + 0.015 * (j + 0.5) / steps_z);
      flow += *space.values_at(at) / (steps_y * steps_z);
    }
  return flow;
}

/// The patch moves as one piece with a mass of 12 mg.
HoleUnknowns patch_hole()
{
  constexpr double mass = 1.2e-5;        // [kg]
  constexpr double area = 60e-3 * 15e-3; // [m2]
  return {.inertance = Eigen::MatrixXd::Constant(1, 1, mass / (plain_air.density * area * area))};
}

/// Of the modes that change the volume of the air; one pressure leaves all others as they are in vacuo, but for the
/// asymmetry of the mesh.
Values breathing_values(const CoupledModes& modes, const ReferenceCase& reference)
{
  const double least = 0.01 * modes.volume_change.cwiseAbs().maxCoeff();
  std::vector<double> frequencies_hz;
  for (Eigen::Index i = 0; i < modes.frequencies_hz.size(); ++i)
    if (std::abs(modes.volume_change(i)) > least)
      frequencies_hz.push_back(modes.frequencies_hz(i));
  return numbered_values(Eigen::VectorXd::Map(frequencies_hz.data(), static_cast<Eigen::Index>(frequencies_hz.size())),
                         reference);
}

constexpr int num_cavity_modes = 24;
constexpr int degree_at_patch = 6; // of the pressure through the depth: the flow jumps at the rim of the patch

CaseModel plate_on_box(const std::string& name, const BoxPlate& plate, const Box& box)
{
  return {.name = name,
          .compute = [=](const ReferenceCase& reference)
          {
            const CavityMesh mesh = cavity_of(box);
            const CavitySpace space(mesh, box.degree);
            const PlateModes top = plate_modes(plate, box, space, WallSide::top);
            const CavityModes cavity = solve_cavity_modes(space, plain_air, {.num_modes = num_cavity_modes});
            return numbered_values(solve_coupled_modes({.frequencies_hz = top.frequencies_hz, .loss = {}}, {},
                                                       air_moments(space, cavity, top.flow), plain_air)
                                       .frequencies_hz,
                                   reference);
          }};
}

/// What the two plates and the air of a toy body do.
struct ToyBody
{
  BoxPlate top;
  BoxPlate back;
};

enum class Hole
{
  none,
  patch,   ///< of a rib, moving as one piece
  compact, ///< on one uniform pressure, conductance 60 mm
};

CaseModel toy_body(const std::string& name, const ToyBody& body, Hole hole)
{
  const auto compute = [=](const ReferenceCase& reference)
  {
    const Box& box = wooden_box;
    const CavityMesh mesh = cavity_of(box);
    const CavitySpace space(mesh, hole == Hole::patch ? degree_at_patch : box.degree);
    const PlateModes plates =
        joined(plate_modes(body.top, box, space, WallSide::top), plate_modes(body.back, box, space, WallSide::back));
    const StructureModes structure = {.frequencies_hz = plates.frequencies_hz, .loss = {}};
    if (hole == Hole::compact)
    {
      Eigen::VectorXd volumes(plates.flow.cols() + 1);
      volumes << plates.flow.transpose() * space.uniform(), 1.0;
      return breathing_values(solve_coupled_modes(structure,
                                                  {.inertance = Eigen::MatrixXd::Constant(1, 1, 1.0 / 0.060)},
                                                  uniform_pressure(space.volume(), volumes), plain_air),
                              reference);
    }
    const CavityModes cavity = solve_cavity_modes(space, plain_air, {.num_modes = num_cavity_modes});
    if (hole == Hole::none)
      return numbered_values(
          solve_coupled_modes(structure, {}, air_moments(space, cavity, plates.flow), plain_air).frequencies_hz,
          reference);
    Eigen::MatrixXd flow(plates.flow.rows(), plates.flow.cols() + 1);
    flow << plates.flow, patch_flow(box, space);
    return numbered_values(
        solve_coupled_modes(structure, patch_hole(), air_moments(space, cavity, flow), plain_air).frequencies_hz,
        reference);
  };
  return {.name = name, .compute = compute};
}

/// The hole alone, in a rigid box.
Values rigid_box_with_patch(const ReferenceCase& reference)
{
  const CavityMesh mesh = cavity_of(wooden_box);
  const CavitySpace space(mesh, degree_at_patch);
  const CavityModes cavity = solve_cavity_modes(space, plain_air, {.num_modes = num_cavity_modes});
  return numbered_values(
      solve_coupled_modes({}, patch_hole(), air_moments(space, cavity, patch_flow(wooden_box, space)), plain_air)
          .frequencies_hz,
      reference);
}

constexpr ToyBody soft_body = {.top = spruce, .back = maple};
constexpr ToyBody stiff_body = {.top = stiff_spruce, .back = stiff_maple};

} // namespace

std::vector<CaseModel> air_and_structure()
{
  return {plate_on_box("spruce plate on a box of air", spruce, wooden_box),
          plate_on_box("metal plate on a cube of air", metal,
                       {.length = 0.2, .width = 0.2, .depth = 0.2, .cells_x = 16, .cells_y = 16, .degree = 8}),
          {.name = "rigid box with a hole", .compute = rigid_box_with_patch},
          toy_body("soft plates, closed", soft_body, Hole::none),
          toy_body("soft plates and a hole", soft_body, Hole::patch),
          toy_body("soft plates and a compact hole", soft_body, Hole::compact),
          toy_body("stiff plates, closed", stiff_body, Hole::none),
          toy_body("stiff plates and a hole", stiff_body, Hole::patch),
          toy_body("stiff plates and a compact hole", stiff_body, Hole::compact)};
}

} // namespace plate::validation
