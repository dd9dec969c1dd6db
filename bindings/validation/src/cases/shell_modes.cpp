// SPDX-License-Identifier: MPL-2.0
// Vibration of shells.
#include "modal_values.h"
#include "simple_support.h"

#include <plate/validation/sample_models.h>
#include <plate/validation/sphere_mesh.h>

#include <cmath>
#include <limits>
#include <numbers>

namespace plate::validation
{
namespace
{

using std::numbers::pi;

/// Steel, R 2.5 m, h 0.1 m.
Model steel_sphere()
{
  constexpr double thickness = 0.1;
  return plate_model(sphere(2.5, thickness, 6), solid(isotropic(200e9, 0.3, 7800.0), thickness));
}

/// Tube about the x axis over the planform (x, arc length).
Surface tube(double radius)
{
  return {.position = [=](double x, double arc)
          { return Eigen::Vector3d(x, radius * std::sin(arc / radius), radius * std::cos(arc / radius)); },
          .normal = [=](double, double arc)
          { return Eigen::Vector3d(0.0, std::sin(arc / radius), std::cos(arc / radius)); }};
}

struct Tube
{
  double slenderness; // radius over thickness
  double length;      // over the radius
};

/// An eighth by symmetry: half the length and half the round of a tube of radius 1 m on diaphragms.
Model half_tube(const Tube& shape)
{
  const double thickness = 1.0 / shape.slenderness;
  return plate_model(grid_mesh({.x = even_lines(0.0, 0.5 * shape.length, 12),
                                .y = even_lines(0.0, pi, 48),
                                .surface = tube(1.0),
                                .thickness = thickness}),
                     solid(isotropic(200e9, 0.3, 8000.0), thickness));
}

/// Diaphragm at x = 0, symmetry at half the length and where the round is cut.
HoldRule tube_supports(double length)
{
  return [=](std::size_t, const Eigen::Vector3d& at)
  {
    constexpr double near = 1e-9;
    Hold hold;
    if (at.x() < near)
      hold.held[1] = hold.held[2] = hold.held[3] = true;
    if (at.x() > 0.5 * length - near)
      hold.held[0] = hold.held[4] = true;
    if (std::abs(at.y()) < near)
      hold.held[1] = hold.held[3] = true;
    return hold;
  };
}

/// Share of cos(n phi) in the radial displacement round the middle of the tube, 0...1.
double share_of_wave(const Model& model, const Eigen::VectorXd& u, double middle, int n)
{
  double with_wave = 0.0;
  double all = 0.0;
  double waves = 0.0;
  for (std::size_t node = 0; node < model.mesh.nodes.size(); ++node)
  {
    const Eigen::Vector3d& at = model.mesh.nodes[node];
    if (std::abs(at.x() - middle) > 1e-9)
      continue;
    const double w =
        u.segment<3>(DofMap::dofs_per_node * static_cast<Eigen::Index>(node)).dot(model.mesh.normals[node]);
    const double wave = std::cos(n * std::atan2(at.y(), at.z()));
    with_wave += w * wave;
    all += w * w;
    waves += wave * wave;
  }
  return with_wave * with_wave / (all * waves);
}

/// omega R sqrt(rho (1 - nu^2) / E) of the modes with half a wave along the tube and n round it, "omega_n4".
CaseModel tube_modes(const std::string& name, const Tube& shape)
{
  const auto compute = [=](const ReferenceCase& reference)
  {
    const Model model = half_tube(shape);
    const HeldSystem held = held_system(model, tube_supports(shape.length));
    const ModalResult modes = checked_modes(held.system, 36);
    const double scale = 2.0 * pi * std::sqrt(8000.0 * (1.0 - 0.3 * 0.3) / 200e9);
    Values values;
    for (const ReferenceValue& value : reference.values)
    {
      const int n = std::stoi(value.quantity.substr(value.quantity.rfind('n') + 1));
      for (Eigen::Index mode = 0; mode < modes.frequencies_hz.size() && !values.contains(value.quantity); ++mode)
        if (share_of_wave(model, held.to_model * modes.shapes.col(mode), 0.5 * shape.length, n) > 0.9)
          values[value.quantity] = scale * modes.frequencies_hz(mode);
    }
    return values;
  };
  return {.name = name, .compute = compute};
}

/// Cantilever of plane stress, 10 m long, 5 m wide at the root and 1 m at the tip.
Values tapered_membrane(const ReferenceCase& reference)
{
  const auto width = [](double x) { return 5.0 - 0.4 * x; };
  const Surface surface = {.position = [=](double x, double y) { return Eigen::Vector3d(x, y * width(x), 0.0); },
                           .normal = [](double, double) { return Eigen::Vector3d(0.0, 0.0, 1.0); }};
  const Model model = plate_model(
      grid_mesh({.x = even_lines(0.0, 10.0, 20), .y = even_lines(-0.5, 0.5, 8), .surface = surface, .thickness = 0.05}),
      solid(isotropic(200e9, 0.3, 8000.0), 0.05));
  const auto rule = [](std::size_t, const Eigen::Vector3d& at)
  {
    const bool root = at.x() < 1e-9;
    return Hold{.held = {root, root, true, true, true}};
  };
  return modal_values(held_system(model, rule).system, reference);
}

struct Panel
{
  double length; // along the axis [m]
  double arc;    // [m]
  double radius; // infinite for a plate [m]
};

/// Panel clamped at one end of its axis.
CaseModel cantilever(const std::string& name, const Panel& panel, const Laminate& laminate)
{
  const auto model = [=]
  {
    const double strip = 1.2 * total_thickness(laminate);
    Model blade = plate_model(grid_mesh({.x = lines_with_strips(0.5 * panel.length, 14, strip),
                                         .y = lines_with_strips(0.5 * panel.arc, 10, strip),
                                         .surface = std::isinf(panel.radius) ? flat() : tube(panel.radius),
                                         .thickness = total_thickness(laminate)}),
                              laminate);
    blade.supports.push_back({.group = "x-", .support = EdgeSupport::clamped});
    return blade;
  };
  return modes_of(name, model);
}

/// @param G13,G23  transverse shear moduli [Pa]
Material crawley_ply(double G13 = 4.48e9, double G23 = 1.53e9)
{
  return {.name = "graphite/epoxy",
          .elastic = {.E1 = 128e9,
                      .E2 = 11e9,
                      .E3 = 11e9,
                      .G12 = 4.48e9,
                      .G13 = G13,
                      .G23 = G23,
                      .nu12 = 0.25,
                      .nu13 = 0.25,
                      .nu23 = 0.25},
          .density = 1500.0};
}

constexpr double chord = 76.2e-3; // [m]

/// The references take the sum of the plies' transverse stiffness where equilibrium takes the sum of their compliance:
/// as if plies at 45 degrees were a third stiffer. A ply with the mean of both moduli makes both sums the same.
Material evened_ply()
{
  constexpr double mean = 0.5 * (4.48e9 + 1.53e9);
  return crawley_ply(mean, mean);
}

CaseModel crawley(const std::string& name, double length, double radius, const std::vector<double>& half,
                  const Material& ply = evened_ply())
{
  std::vector<double> degrees = half;
  degrees.insert(degrees.end(), half.rbegin(), half.rend());
  const double arc = std::isinf(radius) ? chord : 2.0 * radius * std::asin(0.5 * chord / radius);
  return cantilever(name, {length, arc, radius}, stack(ply, 0.13e-3, degrees));
}

CaseModel fan_blade(const std::string& name)
{
  return cantilever(name, {0.3048, 0.3048, 0.6096}, solid(isotropic(206.84e9, 0.3, 7747.73), 3.048e-3));
}

} // namespace

std::vector<CaseModel> shell_modes()
{
  constexpr double flat_plate = std::numeric_limits<double>::infinity();
  constexpr double radius = 127.5e-3;
  return {modes_of("closed sphere", steel_sphere),
          tube_modes("tube, R/h 100, L/R 2", {100.0, 2.0}),
          tube_modes("tube, R/h 100, L/R 5", {100.0, 5.0}),
          tube_modes("tube, R/h 500, L/R 2", {500.0, 2.0}),
          tube_modes("tube, R/h 500, L/R 5", {500.0, 5.0}),
          {.name = "tapered membrane", .compute = tapered_membrane},
          fan_blade("fan blade"),
          fan_blade("measured fan blade"),
          crawley("cantilever [0/0/30/-30]s, square", chord, flat_plate, {0, 0, 30, -30}, crawley_ply()),
          crawley("cantilever [0/45/-45/90]s, square", chord, flat_plate, {0, 45, -45, 90}),
          crawley("cantilever [45/-45/-45/45]s, square", chord, flat_plate, {45, -45, -45, 45}),
          crawley("cantilever [0/0/30/-30]s, 2 to 1", 2.0 * chord, flat_plate, {0, 0, 30, -30}, crawley_ply()),
          crawley("cantilever [0/45/-45/90]s, 2 to 1", 2.0 * chord, flat_plate, {0, 45, -45, 90}),
          crawley("cantilever [45/-45/-45/45]s, 2 to 1", 2.0 * chord, flat_plate, {45, -45, -45, 45}),
          crawley("curved cantilever [0/0/30/-30]s, square", chord, radius, {0, 0, 30, -30}, crawley_ply()),
          crawley("curved cantilever [0/45/-45/90]s, square", chord, radius, {0, 45, -45, 90}),
          crawley("curved cantilever [45/-45/-45/45]s, square", chord, radius, {45, -45, -45, 45}),
          crawley("curved cantilever [0/0/30/-30]s, 2 to 1", 2.0 * chord, radius, {0, 0, 30, -30}, crawley_ply()),
          crawley("curved cantilever [0/45/-45/90]s, 2 to 1", 2.0 * chord, radius, {0, 45, -45, 90})};
}

} // namespace plate::validation
