// SPDX-License-Identifier: MPL-2.0
// Static benchmarks of shells, in the units of their sources.
#include "case_models.h"
#include "simple_support.h"

#include <plate/validation/sample_models.h>

#include <Eigen/Geometry>

#include <cmath>
#include <numbers>

namespace plate::validation
{
namespace
{

using std::numbers::pi;
constexpr double near = 1e-9;

Eigen::Vector3d displacement_of(const HeldSystem& held, const Eigen::VectorXd& load, std::size_t node)
{
  return deflection(held, load).col(static_cast<Eigen::Index>(node));
}

/// Barrel about the x axis, arc length from the crown.
Surface barrel(double radius)
{
  return {.position = [=](double x, double arc)
          { return Eigen::Vector3d(x, radius * std::sin(arc / radius), radius * std::cos(arc / radius)); },
          .normal = [=](double, double arc)
          { return Eigen::Vector3d(0.0, std::sin(arc / radius), std::cos(arc / radius)); }};
}

/// R 25, length 50, half-angle 40 degrees, t 0.25, E 4.32e8, nu 0, 90 per area downward, diaphragms at the ends.
Values barrel_roof(const ReferenceCase&)
{
  const double half_arc = 25.0 * Angle::degrees(40.0).in_radians();
  const Model model = plate_model(grid_mesh({.x = even_lines(-25.0, 25.0, 16),
                                             .y = even_lines(-half_arc, half_arc, 14),
                                             .surface = barrel(25.0),
                                             .thickness = 0.25}),
                                  solid(isotropic(4.32e8, 0.0, 1.0), 0.25));
  const auto rule = [](std::size_t, const Eigen::Vector3d& at)
  {
    const bool end = std::abs(at.x()) > 25.0 - near;
    return Hold{.held = {std::abs(at.x()) < near, end, end, false, false}}; // x by symmetry
  };
  const Eigen::VectorXd load = area_load(model, [](const Eigen::Vector3d&) { return Eigen::Vector3d(0, 0, -90.0); });
  const std::size_t middle = node_at(model, barrel(25.0).position(0.0, half_arc));
  return {{"deflection", -displacement_of(held_system(model, rule), load, middle).z()}};
}

/// An isotropic material without transverse shear, for values of thin-shell theory.
Material without_shear(double E, double nu)
{
  Material material = isotropic(E, nu, 1.0);
  material.elastic.G13 = material.elastic.G23 = 1e4 * E;
  return material;
}

/// Grid lines from 0, finer towards it.
std::vector<double> graded_lines(double to, int cells)
{
  std::vector<double> lines;
  for (const double part : even_lines(0.0, 1.0, cells))
    lines.push_back(to * part * part);
  return lines;
}

/// An eighth of a tube on diaphragms, pinched by two forces of 1: R 300, L 600, t 3, E 3e6, nu 0.3.
Values pinched_tube(const ReferenceCase&)
{
  const Model model = plate_model(grid_mesh({.x = graded_lines(300.0, 20),
                                             .y = graded_lines(150.0 * pi, 30),
                                             .surface = barrel(300.0),
                                             .thickness = 3.0}),
                                  solid(without_shear(3e6, 0.3), 3.0));
  const auto rule = [](std::size_t, const Eigen::Vector3d& at)
  {
    Hold hold;
    if (at.x() > 300.0 - near) // diaphragm
      hold.held[1] = hold.held[2] = true;
    if (at.x() < near) // planes of symmetry: across the tube, through the force, square to it
      hold.held[0] = hold.held[4] = true;
    if (std::abs(at.y()) < near)
      hold.held[1] = hold.held[3] = true;
    if (std::abs(at.z()) < near)
      hold.held[2] = hold.held[3] = true;
    return hold;
  };
  const HeldSystem held = held_system(model, rule);
  Eigen::VectorXd load = Eigen::VectorXd::Zero(held.to_model.rows());
  const std::size_t pinched = node_at(model, {0.0, 0.0, 300.0});
  add_force(load, pinched, {0, 0, -0.25});
  return {{"deflection", -displacement_of(held, load, pinched).z()}};
}

/// A quarter of a hemisphere with a hole of 18 degrees: R 10, t 0.04, E 6.825e7, nu 0.3, forces of 2 at the equator.
Values open_hemisphere(const ReferenceCase&)
{
  const auto direction = [](double longitude, double latitude)
  {
    return Eigen::Vector3d(std::cos(latitude) * std::cos(longitude), std::cos(latitude) * std::sin(longitude),
                           std::sin(latitude));
  };
  const Surface surface = {.position = [=](double longitude, double latitude) -> Eigen::Vector3d
                           { return 10.0 * direction(longitude, latitude); },
                           .normal = direction};
  const Model model = plate_model(grid_mesh({.x = even_lines(0.0, 0.5 * pi, 16),
                                             .y = even_lines(0.0, 0.4 * pi, 16),
                                             .surface = surface,
                                             .thickness = 0.04}),
                                  solid(isotropic(6.825e7, 0.3, 1.0), 0.04));
  const std::size_t pulled = node_at(model, {10.0, 0.0, 0.0});
  const std::size_t pushed = node_at(model, {0.0, 10.0, 0.0});
  const auto rule = [=](std::size_t node, const Eigen::Vector3d& at)
  {
    Hold hold;
    if (std::abs(at.y()) < near)
      hold.held[1] = hold.held[3] = true;
    if (std::abs(at.x()) < near)
      hold.held[0] = hold.held[4] = true;
    hold.held[2] = node == pulled; // against drifting away
    return hold;
  };
  const HeldSystem held = held_system(model, rule);
  Eigen::VectorXd load = Eigen::VectorXd::Zero(held.to_model.rows());
  add_force(load, pulled, {1.0, 0, 0}); // half of the force in each quarter
  add_force(load, pushed, {0, -1.0, 0});
  return {{"deflection", displacement_of(held, load, pulled).x()}};
}

/// Grid lines over [-1/2, 1/2], closer together towards narrow strips at the edges. Clamped and free edges of a thin
/// saddle have layers of bending as wide as the square root of its thickness: even lines leave 0.7 % at L/t 1000.
std::vector<double> lines_for_edge_layers(int cells)
{
  std::vector<double> lines = lines_with_strips(0.5, cells, 0.005);
  const double inner = lines[lines.size() - 2];
  for (std::size_t i = 1; i + 1 < lines.size(); ++i)
    lines[i] = std::copysign(inner * (1.0 - std::pow(1.0 - std::abs(lines[i]) / inner, 1.5)), lines[i]);
  return lines;
}

/// z = x^2 - y^2 over a unit square, clamped at x = -1/2, E 2e11, nu 0.3, under its weight of 8000 t per area.
Values saddle(const ReferenceCase&)
{
  const Surface surface = {.position = [](double x, double y) { return Eigen::Vector3d(x, y, x * x - y * y); },
                           .normal = [](double x, double y)
                           { return Eigen::Vector3d(-2.0 * x, 2.0 * y, 1.0).normalized(); }};
  Values values;
  for (const int slenderness : {100, 1000})
  {
    const double thickness = 1.0 / slenderness;
    const std::vector<double> lines = lines_for_edge_layers(40);
    const Model model = plate_model(grid_mesh({.x = lines, .y = lines, .surface = surface, .thickness = thickness}),
                                    solid(isotropic(2e11, 0.3, 1.0), thickness));
    const auto rule = [](std::size_t, const Eigen::Vector3d& at)
    {
      const bool held = at.x() < -0.5 + near;
      return Hold{.held = {held, held, held, held, held}};
    };
    const auto weight = [=](const Eigen::Vector3d&) { return Eigen::Vector3d(0, 0, -8000.0 * thickness); };
    const std::size_t tip = node_at(model, {0.5, 0.0, 0.25});
    values["deflection_at_L/t_" + std::to_string(slenderness)] =
        -displacement_of(held_system(model, rule), area_load(model, weight), tip).z();
  }
  return values;
}

/// L 12, width 1.1, t 0.32, twisted by 90 degrees, E 29e6, nu 0.22, a force of 1 at the tip.
Values twisted_strip(const ReferenceCase&)
{
  constexpr double turn = 0.5 * pi / 12.0; // per length
  const auto across = [](double x) { return Eigen::Vector3d(0.0, std::cos(turn * x), std::sin(turn * x)); };
  const Surface surface = {.position = [=](double x, double y) -> Eigen::Vector3d
                           { return Eigen::Vector3d(x, 0, 0) + y * across(x); },
                           .normal =
                               [=](double x, double y)
                           {
                             const Eigen::Vector3d turned(0.0, -std::sin(turn * x), std::cos(turn * x));
                             const Eigen::Vector3d along = Eigen::Vector3d(1, 0, 0) + y * turn * turned;
                             return along.cross(across(x)).normalized();
                           }};
  const Model model = plate_model(
      grid_mesh(
          {.x = even_lines(0.0, 12.0, 24), .y = even_lines(-0.55, 0.55, 4), .surface = surface, .thickness = 0.32}),
      solid(isotropic(29e6, 0.22, 1.0), 0.32));
  const std::vector<bool> root = nodes_of(model.mesh, {"x-"});
  const auto rule = [&](std::size_t node, const Eigen::Vector3d&) {
    return Hold{.held = {root[node], root[node], root[node], root[node], root[node]}};
  };
  const HeldSystem held = held_system(model, rule);
  const std::size_t tip = node_at(model, {12.0, 0, 0});
  const auto tip_deflection = [&](const Eigen::Vector3d& force)
  {
    Eigen::VectorXd load = Eigen::VectorXd::Zero(held.to_model.rows());
    for (const EdgeGroup& group : model.mesh.boundary)
      if (group.name == "x+")
        for (const auto& edge : group.edges)
          for (std::size_t i = 0; i < edge.size(); ++i) // a cubic edge takes an even load by eighths
            add_force(load, static_cast<std::size_t>(edge[i]),
                      force * (i == 0 || i == 3 ? 0.125 : 0.375) / static_cast<double>(group.edges.size()));
    return displacement_of(held, load, tip).dot(force);
  };
  return {{"along_the_width", tip_deflection({0, 0, 1.0})}, {"across_the_width", tip_deflection({0, 1.0, 0})}};
}

} // namespace

std::vector<CaseModel> shell_bending()
{
  return {{.name = "barrel roof", .compute = barrel_roof},
          {.name = "pinched tube on diaphragms", .compute = pinched_tube},
          {.name = "hemisphere with a hole", .compute = open_hemisphere},
          {.name = "clamped saddle", .compute = saddle},
          {.name = "twisted strip", .compute = twisted_strip}};
}

} // namespace plate::validation
