// SPDX-License-Identifier: MPL-2.0
// Free plates 350 x 200 mm by three-dimensional elasticity.
// Arched plates have the mid-surface z = 15 mm (1 - (2x/350)^2)(1 - (2y/200)^2).
#include "modal_values.h"

#include <plate/validation/sample_models.h>

#include <cmath>

namespace plate::validation
{
namespace
{

constexpr double length = 0.35;             // [m]
constexpr double width = 0.20;              // [m]
constexpr double arch = 0.015;              // [m]
constexpr double spruce_thickness = 2.5e-3; // [m]

Model plain_plate(const Laminate& laminate, const Surface& surface, int cells_x, int cells_y)
{
  const double strip = 3e-3;
  return plate_model(grid_mesh({.x = lines_with_strips(0.5 * length, cells_x, strip),
                                .y = lines_with_strips(0.5 * width, cells_y, strip),
                                .surface = surface,
                                .thickness = total_thickness(laminate)}),
                     laminate);
}

/// Slots x -55...15, |y| 52...60 mm, with strips round them.
bool outside_slots(double x, double y)
{
  return !(x > -0.055 && x < 0.015 && std::abs(y) > 0.052 && std::abs(y) < 0.060);
}

/// Footprint x -125...125, y 17...23 mm.
bool under_bar(double x, double y)
{
  return std::abs(x) < 0.125 && y > 0.017 && y < 0.023;
}

bool nowhere_cut(double, double)
{
  return true;
}

/// A grid with lines along slots and bar, and strips along the free edges.
GridPlate detailed_grid()
{
  return {.x = {-.175, -.172, -.153, -.137, -.128, -.125, -.122, -.105, -.085, -.068, -.058,
                -.055, -.052, -.035, -.018, 0,     .010,  .012,  .015,  .018,  .028,  .045,
                .065,  .085,  .105,  .122,  .125,  .128,  .137,  .153,  .172,  .175},
          .y = {-.1,  -.097, -.08, -.063, -.060, -.057, -.055, -.052, -.049, -.035, -.018, 0,    .013, .017,
                .020, .023,  .028, .038,  .049,  .052,  .055,  .057,  .060,  .063,  .08,   .097, .1},
          .surface = biparabolic(length, width, arch),
          .thickness = spruce_thickness};
}

Model cut_plate(Grain grain)
{
  GridPlate grid = detailed_grid();
  grid.keep = outside_slots;
  return plate_model(grid_mesh(grid), solid(reference_spruce(), spruce_thickness, 0.0, grain));
}

/// Bar 6 mm wide, 3 mm high at the ends and 12 in the middle.
Model barred_plate(bool (*keep)(double, double))
{
  GridPlate grid = detailed_grid();
  grid.keep = keep;
  grid.under_bar = under_bar;
  Model model = plate_model(grid_mesh(grid), solid(reference_spruce(), spruce_thickness, 0.0, Grain::carved));
  model.bars = {{.material = reference_spruce(),
                 .width = 6e-3,
                 .profile = {.station = {-.125, 0.0, .125}, .height = {3e-3, 12e-3, 3e-3}}}};
  return model;
}

Laminate sandwich(const Material& core, double core_thickness, Grain grain)
{
  const Ply face = {.material = reference_carbon(), .thickness = 0.2e-3};
  return {{face, {.material = core, .thickness = core_thickness, .grain = grain}, face}};
}

/// A core with its grain at 15 degrees under unequal skins at 30 and -20 degrees, on an arch without symmetry,
/// z = 15 mm (1 - u^2)(1 - v^2)(1 + 0.4 u v + 0.2 v) with u = 2x/350 and v = 2y/200: every sign shows.
Model turned_core()
{
  const auto skin = [](double thickness, double degrees)
  { return Ply{.material = reference_carbon(), .thickness = thickness, .angle = Angle::degrees(degrees)}; };
  const Ply core = {
      .material = reference_spruce(), .thickness = 1.8e-3, .angle = Angle::degrees(15.0), .grain = Grain::carved};
  const Surface even = biparabolic(length, width, 1.0);
  const auto skewed = [](double u, double v) { return 1.0 + 0.4 * u * v + 0.2 * v; };
  const Surface surface = {
      .position =
          [=](double x, double y)
      {
        const double z = arch * even.position(x, y).z() * skewed(2.0 * x / length, 2.0 * y / width);
        return Eigen::Vector3d(x, y, z);
      },
      .normal =
          [=](double x, double y)
      {
        const double u = 2.0 * x / length;
        const double v = 2.0 * y / width;
        const double z_u = -2.0 * u * (1.0 - v * v) * skewed(u, v) + (1.0 - u * u) * (1.0 - v * v) * 0.4 * v;
        const double z_v = -2.0 * v * (1.0 - u * u) * skewed(u, v) + (1.0 - u * u) * (1.0 - v * v) * (0.4 * u + 0.2);
        return Eigen::Vector3d(-arch * z_u * 2.0 / length, -arch * z_v * 2.0 / width, 1.0).normalized();
      }};
  const Laminate laminate = {{skin(0.3e-3, 30.0), core, skin(0.15e-3, -20.0)}};
  return plain_plate(laminate, surface, 14, 8);
}

CaseModel plain(const std::string& name, const Laminate& laminate, double height, int cells_x, int cells_y)
{
  return modes_of(name, [=] { return plain_plate(laminate, biparabolic(length, width, height), cells_x, cells_y); });
}

} // namespace

std::vector<CaseModel> carved_and_laid()
{
  const Material spruce = reference_spruce();
  return {plain("3D flat spruce", solid(spruce, spruce_thickness), 0.0, 14, 8),
          plain("3D laid spruce", solid(spruce, spruce_thickness), arch, 14, 8),
          plain("3D carved spruce", solid(spruce, spruce_thickness, 0.0, Grain::carved), arch, 14, 8),
          plain("3D carbon [0/60/-60]s", stack(reference_carbon(), 0.25e-3, {0, 60, -60, -60, 60, 0}), arch, 18, 10),
          plain("3D carbon on balsa", sandwich(reference_balsa(), 2.0e-3, Grain::laid), arch, 14, 8),
          plain("3D carbon on carved spruce", sandwich(reference_spruce(), 1.8e-3, Grain::carved), arch, 14, 8),
          modes_of("3D carbon on carved spruce, grain turned", turned_core),
          modes_of("3D carved spruce with cut-outs", [] { return cut_plate(Grain::carved); }),
          modes_of("3D laid spruce with cut-outs", [] { return cut_plate(Grain::laid); }),
          modes_of("3D carved spruce with bar", [] { return barred_plate(nowhere_cut); }),
          modes_of("3D carved spruce with bar and cut-outs", [] { return barred_plate(outside_slots); })};
}

} // namespace plate::validation
