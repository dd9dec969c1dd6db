// SPDX-License-Identifier: MPL-2.0
// Plates and shells under forces: deflection, vibration under stress, buckling.
#include "modal_values.h"
#include "simple_support.h"

#include <plate/assembly/loads.h>
#include <plate/core/error.h>
#include <plate/solvers/buckling.h>
#include <plate/solvers/statics.h>
#include <plate/validation/disc_mesh.h>
#include <plate/validation/sample_models.h>

#include <cmath>
#include <numbers>

namespace plate::validation
{
namespace
{

constexpr double length = 0.35;      // [m]
constexpr double width = 0.2;        // [m]
constexpr double thickness = 2.8e-3; // [m]
constexpr double rigid_shear = 30.0; // shear moduli through the plate over the usual: the values are of thin plates

/// Spruce-like, of the reference values.
Material thin_plate_spruce()
{
  return {.name = "spruce",
          .elastic = {.E1 = 12e9,
                      .E2 = 0.8e9,
                      .E3 = 0.8e9,
                      .G12 = 0.75e9,
                      .G13 = rigid_shear * 0.75e9,
                      .G23 = rigid_shear * 0.75e9,
                      .nu12 = 0.38,
                      .nu13 = 0.0,
                      .nu23 = 0.0},
          .density = 420.0};
}

/// z = -x^2 / (2 Rx) - y^2 / (2 Ry).
Surface paraboloid(double Rx, double Ry)
{
  return {.position = [=](double x, double y) { return Eigen::Vector3d(x, y, -0.5 * (x * x / Rx + y * y / Ry)); },
          .normal = [=](double x, double y) { return Eigen::Vector3d(x / Rx, y / Ry, 1.0).normalized(); }};
}

/// Grid lines with one through the load, where the deflection has a peak.
std::vector<double> lines_through(double half, double load, int cells_below, int cells_above)
{
  std::vector<double> lines = even_lines(-half, load, cells_below);
  const std::vector<double> above = even_lines(load, half, cells_above);
  lines.insert(lines.end(), above.begin() + 1, above.end());
  return lines;
}

const Eigen::Vector2d load_point(0.190 - 0.5 * length, 0.083 - 0.5 * width);

Model spruce_rectangle(const Surface& surface)
{
  return plate_model(grid_mesh({.x = lines_through(0.5 * length, load_point.x(), 14, 12),
                                .y = lines_through(0.5 * width, load_point.y(), 8, 10),
                                .surface = surface,
                                .thickness = thickness}),
                     solid(thin_plate_spruce(), thickness));
}

HoldRule diaphragms()
{
  return simply_supported(length, width, NavierEdge::tangential);
}

/// Displacements under a force along z at a point of the planform.
NodalUnknowns under_force(const Model& model, const HeldSystem& held, const Eigen::Vector2d& at)
{
  NodalUnknowns forces = no_load(model.mesh);
  add_load(model.mesh, PointForce{.at = at, .force = {0.0, 0.0, 1.0}}, forces);
  const DofMap dofs = number_unknowns(model);
  const StaticResult result = solve_statics(held.system, held.to_model.transpose() * on_unknowns(dofs, forces));
  return at_nodes(dofs, held.to_model * result.x);
}

/// Displacement along z at a point of the planform: the work of a unit force there.
double deflection_at(const Model& model, const NodalUnknowns& u, const Eigen::Vector2d& at)
{
  NodalUnknowns unit = no_load(model.mesh);
  add_load(model.mesh, PointForce{.at = at, .force = {0.0, 0.0, 1.0}}, unit);
  return unit.cwiseProduct(u).sum();
}

Values flat_under_force(const ReferenceCase&)
{
  const Model model = spruce_rectangle(flat());
  const NodalUnknowns u = under_force(model, held_system(model, diaphragms()), load_point);
  return {{"at_load_m", deflection_at(model, u, load_point)}, {"in_the_middle_m", deflection_at(model, u, {0.0, 0.0})}};
}

/// Modes by number and the deflection under the load.
CaseModel arched(const std::string& name, double Rx, double Ry)
{
  return {.name = name,
          .compute = [=](const ReferenceCase&)
          {
            const Model model = spruce_rectangle(paraboloid(Rx, Ry));
            const HeldSystem held = held_system(model, diaphragms());
            const ModalResult modes = checked_modes(held.system, 4);
            Values values = {{"deflection_m", deflection_at(model, under_force(model, held, load_point), load_point)}};
            for (Eigen::Index i = 0; i < 4; ++i)
              values["f" + std::to_string(i + 1) + "_hz"] = modes.frequencies_hz(i);
            return values;
          }};
}

/// A cap of a sphere, as far as membrane forces reach.
Values sphere_under_force(const ReferenceCase&)
{
  constexpr double radius = 0.5; // [m]
  constexpr double edge = 0.35;  // [m]
  constexpr double wall = 3e-3;  // [m]
  Material material = isotropic(10e9, 0.3, 1000.0);
  material.elastic.G13 *= rigid_shear;
  material.elastic.G23 *= rigid_shear;
  const Surface sphere = {.position = [=](double x, double y)
                          { return Eigen::Vector3d(x, y, std::sqrt(radius * radius - x * x - y * y) - radius); },
                          .normal = [=](double x, double y)
                          { return Eigen::Vector3d(x, y, std::sqrt(radius * radius - x * x - y * y)).normalized(); }};
  std::vector<double> rings;
  constexpr int num_rings = 20;
  for (int i = 1; i <= num_rings; ++i)
    rings.push_back(std::pow(static_cast<double>(i) / num_rings, 2.0)); // finer towards the force
  Model model =
      plate_model(disc_mesh({.semi_x = edge, .semi_y = edge, .rings = rings, .surface = sphere, .thickness = wall}),
                  solid(material, wall));
  model.supports = {{"outline", EdgeSupport::hinged}};
  NodalUnknowns forces = no_load(model.mesh);
  add_load(model.mesh, PointForce{.at = {0.0, 0.0}, .force = {0.0, 0.0, -1.0}}, forces);
  const System system = assemble(model);
  return {{"deflection_m", solve_statics(system, on_unknowns(system.dofs, forces)).work}};
}

/// Geometric stiffness of a flat plate under an even force per width along x.
SparseMatrix under_edge_force(const Model& model, const HeldSystem& held, double force)
{
  const OrthotropicElastic& e = model.material.laminate.plies.front().material.elastic;
  const double strain = force / (e.E1 * thickness);
  NodalUnknowns u = no_load(model.mesh);
  for (std::size_t node = 0; node < model.mesh.nodes.size(); ++node)
  {
    u(0, static_cast<Eigen::Index>(node)) = strain * model.mesh.nodes[node].x();
    u(1, static_cast<Eigen::Index>(node)) = -e.nu12 * strain * model.mesh.nodes[node].y();
  }
  return condensed(held, geometric_stiffness(model, number_unknowns(model), u));
}

Values modes_under_stress(const ReferenceCase&)
{
  const Model model = spruce_rectangle(flat());
  const HeldSystem held = held_system(model, bending_only(length, width));
  const System loaded = prestressed(held.system, under_edge_force(model, held, -1000.0));
  const ModalResult modes = checked_modes(loaded, 3);
  return {
      {"f11_hz", modes.frequencies_hz(0)}, {"f12_hz", modes.frequencies_hz(1)}, {"f21_hz", modes.frequencies_hz(2)}};
}

Values edge_force_of_buckling(const ReferenceCase&)
{
  const Model model = spruce_rectangle(flat());
  const HeldSystem held = held_system(model, bending_only(length, width));
  const BucklingResult buckling = solve_buckling(held.system, under_edge_force(model, held, -1.0));
  if (buckling.status != Status::converged)
    throw NumericalFailure("buckling did not converge");
  return {{"Nx_N_m", buckling.factors(0)}};
}

Values strings_on_bridge(const ReferenceCase&)
{
  return {{"force_N", string_downforce(220.0, Angle::degrees(22.0))}};
}

} // namespace

std::vector<CaseModel> loaded_plates()
{
  return {{.name = "spruce rectangle under a force", .compute = flat_under_force},
          arched("very shallow spruce shell", 10.0, 3.5),
          arched("arched spruce shell", 1.0, 0.35),
          {.name = "spherical shell under a force", .compute = sphere_under_force},
          {.name = "modes of a pressed rectangle", .compute = modes_under_stress},
          {.name = "buckling of a pressed rectangle", .compute = edge_force_of_buckling},
          {.name = "force of strings on a bridge", .compute = strings_on_bridge}};
}

} // namespace plate::validation
