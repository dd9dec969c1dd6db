// SPDX-License-Identifier: MPL-2.0
// Flat and arched plates with transverse shear.
#include "held_system.h"
#include "modal_values.h"

#include <plate/validation/disc_mesh.h>
#include <plate/validation/sample_models.h>

#include <cmath>

namespace plate::validation
{
namespace
{

struct Size
{
  double length; // [m]
  double width;  // [m]
};

struct Cells
{
  int x;
  int y;
};

Model free_plate(Size size, const Surface& surface, const Laminate& laminate, Cells cells)
{
  const double thickness = total_thickness(laminate);
  const double strip = 1.2 * thickness;
  return plate_model(grid_mesh({.x = lines_with_strips(0.5 * size.length, cells.x, strip),
                                .y = lines_with_strips(0.5 * size.width, cells.y, strip),
                                .surface = surface,
                                .thickness = thickness}),
                     laminate);
}

CaseModel plate(const std::string& name, Size size, const Surface& surface, const Laminate& laminate, Cells cells)
{
  return modes_of(name, [=] { return free_plate(size, surface, laminate, cells); });
}

/// z = H (1 - (x/p)^2 - (y/q)^2).
Surface paraboloid(double p, double q, double height)
{
  return {.position = [=](double x, double y)
          { return Eigen::Vector3d(x, y, height * (1.0 - x * x / (p * p) - y * y / (q * q))); },
          .normal = [=](double x, double y)
          { return Eigen::Vector3d(2.0 * height * x / (p * p), 2.0 * height * y / (q * q), 1.0).normalized(); }};
}

CaseModel spruce_ellipse(const std::string& name, double height)
{
  constexpr double p = 0.175;
  constexpr double q = 0.100;
  constexpr double thickness = 3e-3;
  const auto model = [=]
  {
    return plate_model(disc_mesh({.semi_x = p,
                                  .semi_y = q,
                                  .rings = rings_with_strip(6, 1.2 * thickness / q),
                                  .surface = paraboloid(p, q, height),
                                  .thickness = thickness}),
                       solid(quarter_cut_spruce(), thickness));
  };
  return modes_of(name, model);
}

Laminate four_directions()
{
  return stack(carbon_epoxy(), 0.125e-3, {0, 45, -45, 90, 90, -45, 45, 0});
}

Material steel()
{
  return isotropic(200e9, 0.3, 8000.0);
}

/// Square of 10 m, 1 m thick.
Model thick_square()
{
  return free_plate({10.0, 10.0}, flat(), solid(steel(), 1.0), {8, 8});
}

Model resting_square()
{
  Model model = thick_square();
  support_all_sides(model, EdgeSupport::rest);
  return model;
}

/// The same without bending, so that stretching is alone.
Values stretched_square(const ReferenceCase& reference)
{
  const auto in_plane = [](std::size_t, const Eigen::Vector3d&) {
    return Hold{.held = {false, false, true, true, true}};
  };
  return modal_values(held_system(thick_square(), in_plane).system, reference);
}

/// Rhombus of 45 degrees, 10 m sides, clamped.
CaseModel clamped_rhombus(const std::string& name, double thickness)
{
  const auto model = [=]
  {
    const double slope = std::sqrt(0.5);
    const Surface surface = {.position = [slope](double x, double y)
                             { return Eigen::Vector3d(x - slope * y, slope * y, 0.0); },
                             .normal = [](double, double) { return Eigen::Vector3d(0.0, 0.0, 1.0); }};
    Model rhombus = free_plate({10.0, 10.0}, surface, solid(steel(), thickness), {16, 16});
    support_all_sides(rhombus, EdgeSupport::clamped);
    return rhombus;
  };
  return modes_of(name, model);
}

} // namespace

std::vector<CaseModel> first_order_plates()
{
  const Material spruce = quarter_cut_spruce();
  return {
      plate("spruce 350 x 130 x 3", {0.35, 0.13}, flat(), solid(spruce, 3e-3), {14, 6}),
      plate("spruce 300 x 200 x 2.5", {0.30, 0.20}, flat(), solid(spruce, 2.5e-3), {12, 8}),
      plate("spruce 350 x 200 x 3", {0.35, 0.20}, flat(), solid(spruce, 3e-3), {14, 8}),
      plate("carbon [0/45/-45/90]s 300 x 200", {0.30, 0.20}, flat(), four_directions(), {12, 8}),
      plate("free square with its edge layer", {10.0, 10.0}, flat(), solid(steel(), 0.05), {14, 14}),
      modes_of("thick square resting on its edges", resting_square),
      {.name = "thick square, stretching", .compute = stretched_square},
      clamped_rhombus("clamped rhombus 45, side/thickness 200", 0.05),
      clamped_rhombus("clamped rhombus 45, side/thickness 10", 1.0),
      plate("arched spruce, height 10", {0.35, 0.20}, biparabolic(0.35, 0.20, 0.010), solid(spruce, 3e-3), {14, 8}),
      plate("arched spruce, height 20", {0.35, 0.20}, biparabolic(0.35, 0.20, 0.020), solid(spruce, 3e-3), {14, 8}),
      plate("arched carbon [0/45/-45/90]s", {0.35, 0.20}, biparabolic(0.35, 0.20, 0.015), four_directions(), {18, 10}),
      spruce_ellipse("spruce ellipse, flat", 0.0),
      spruce_ellipse("spruce ellipse, arched", 0.015),
      plate("isotropic paraboloid", {1.0, 1.0}, paraboloid(0.5, 0.5, 0.05), solid(isotropic(70e9, 0.3, 2700.0), 10e-3),
            {10, 10})};
}

} // namespace plate::validation
