// SPDX-License-Identifier: MPL-2.0
// Holes and rigid cavities.
#include "modal_values.h"
#include "simple_support.h"

#include <plate/air/hole_flow.h>
#include <plate/solvers/cavity_modes.h>
#include <plate/validation/disc_mesh.h>
#include <plate/validation/sample_cavities.h>

#include <cmath>
#include <numbers>
#include <string>

namespace plate::validation
{
namespace
{

using Outline = std::vector<Eigen::Vector2d>;

Outline ellipse(double semi_x, double semi_y)
{
  constexpr int count = 400;
  Outline points;
  for (int i = 0; i < count; ++i)
  {
    const double angle = 2.0 * std::numbers::pi * i / count;
    points.emplace_back(semi_x * std::cos(angle), semi_y * std::sin(angle));
  }
  return points;
}

/// 70 x 5 mm with square ends.
Outline slot(double y)
{
  constexpr double half_length = 35e-3;
  constexpr double half_width = 2.5e-3;
  return {{-half_length, y - half_width},
          {half_length, y - half_width},
          {half_length, y + half_width},
          {-half_length, y + half_width}};
}

/// Conductance and frequency with a volume of 2 l.
CaseModel holes(const std::string& name, const std::vector<HoleOutline>& outlines)
{
  return {.name = name,
          .compute = [=](const ReferenceCase&) -> Values
          {
            constexpr double volume = 2e-3;
            const double K = conductance(hole_flow(outlines).inertance());
            return {{"conductance_mm", 1e3 * K},
                    {"f_hz", plain_air.sound_speed / (2.0 * std::numbers::pi) * std::sqrt(K / volume)}};
          }};
}

/// f1_hz, f2_hz, ... of a cavity.
CaseModel cavity(const std::string& name, const std::function<CavityMesh()>& mesh, int degree)
{
  return {.name = name,
          .compute = [=](const ReferenceCase& reference)
          {
            const CavityMesh cavity_mesh = mesh();
            const CavityModes modes =
                solve_cavity_modes(CavitySpace(cavity_mesh, degree), plain_air, {.num_modes = 12});
            return numbered_values(modes.frequencies_hz, reference);
          }};
}

/// 350 x 200 mm.
ShellMesh elliptic_planform()
{
  std::vector<double> rings;
  for (int i = 1; i <= 7; ++i)
    rings.push_back(i / 7.0);
  return disc_mesh({.semi_x = 0.175, .semi_y = 0.1, .rings = rings, .surface = flat(), .thickness = 1e-3});
}

CavityMesh box()
{
  return cavity_over(even_rectangle(0.35, 0.2, 12, 8, 1e-3), [](double, double) { return 0.035; });
}

CavityMesh flat_ellipse()
{
  return cavity_over(elliptic_planform(), [](double, double) { return 0.035; });
}

/// 30 mm at the edge, 45 mm in the middle.
CavityMesh domed_ellipse()
{
  return cavity_over(elliptic_planform(), [](double x, double y)
                     { return 0.030 + 0.015 * (1.0 - std::pow(x / 0.175, 2) - std::pow(y / 0.1, 2)); });
}

} // namespace

std::vector<CaseModel> enclosed_air()
{
  return {holes("round hole", {{.points = ellipse(0.02, 0.02)}}),
          holes("elliptic hole", {{.points = ellipse(0.04, 0.004)}}),
          holes("elliptic hole with a neck", {{.points = ellipse(0.04, 0.004), .wall_thickness = 3e-3}}),
          holes("slot 70 x 5", {{.points = slot(0.0)}}),
          holes("two slots 70 x 5", {{.points = slot(-0.05)}, {.points = slot(0.05)}}),
          cavity("air in a box", box, 0),
          cavity("air in a flat ellipse", flat_ellipse, 0),
          cavity("air in a domed ellipse, planform equation", domed_ellipse, 0),
          cavity("air in a domed ellipse, cubic in height", domed_ellipse, 3)};
}

} // namespace plate::validation
