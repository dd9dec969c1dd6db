// SPDX-License-Identifier: MPL-2.0
// Isotropic plates so thin that thin-plate theory holds: a side or radius of 1 m, 2.5 mm thick, nu 0.3.
#include "modal_values.h"

#include <plate/validation/disc_mesh.h>
#include <plate/validation/sample_models.h>

#include <cmath>
#include <numbers>
#include <string_view>

namespace plate::validation
{
namespace
{

constexpr double side = 1.0;         // or radius [m]
constexpr double thickness = 2.5e-3; // [m]
constexpr double strip = 1.2 * thickness;
constexpr double poisson = 0.3;

Material thin_material(double nu = poisson)
{
  return isotropic(70e9, nu, 2700.0);
}

/// Frequency to omega a^2 sqrt(rho h / D).
double to_lambda(double nu = poisson)
{
  const Material material = thin_material(nu);
  const double D = material.elastic.E1 * std::pow(thickness, 3) / (12.0 * (1.0 - nu * nu));
  return 2.0 * std::numbers::pi * side * side * std::sqrt(material.density * thickness / D);
}

/// Supports of the sides x = 0, y = 0, x = a, y = b by the letters of the literature: S, C, F.
void support_sides(Model& model, std::string_view letters)
{
  const char* const sides[] = {"x-", "y-", "x+", "y+"};
  for (std::size_t i = 0; i < letters.size(); ++i)
    if (letters[i] != 'F')
      model.supports.push_back(
          {.group = sides[i], .support = letters[i] == 'S' ? EdgeSupport::hinged : EdgeSupport::clamped});
}

/// @param ratio  a over b
CaseModel rectangle(const std::string& name, std::string_view letters, double ratio, int cells_x, int cells_y)
{
  const auto model = [=]
  {
    Model plate = plate_model(grid_mesh({.x = lines_with_strips(0.5 * side, cells_x, strip),
                                         .y = lines_with_strips(0.5 * side / ratio, cells_y, strip),
                                         .surface = flat(),
                                         .thickness = thickness}),
                              solid(thin_material(), thickness));
    support_sides(plate, letters);
    return plate;
  };
  return modes_of(name, model, to_lambda());
}

/// Rhombus: the sides y = const stay, the others lean by the angle, towards -x so that the short diagonals are cut.
Surface leaning(double degrees)
{
  const double angle = Angle::degrees(degrees).in_radians();
  return {.position = [angle](double x, double y)
          { return Eigen::Vector3d(x - y * std::sin(angle), y * std::cos(angle), 0.0); },
          .normal = [](double, double) { return Eigen::Vector3d(0.0, 0.0, 1.0); }};
}

CaseModel rhombus(const std::string& name, std::string_view letters, double degrees)
{
  const auto model = [=]
  {
    const std::vector<double> lines = lines_with_strips(0.5 * side, 26, strip);
    Model plate = plate_model(grid_mesh({.x = lines, .y = lines, .surface = leaning(degrees), .thickness = thickness}),
                              solid(thin_material(), thickness));
    support_sides(plate, letters);
    return plate;
  };
  return modes_of(name, model, to_lambda());
}

CaseModel circle(const std::string& name, EdgeSupport support, double nu)
{
  const auto model = [=]
  {
    Model plate = plate_model(disc_mesh({.semi_x = side,
                                         .semi_y = side,
                                         .rings = rings_with_strip(14, strip / side),
                                         .surface = flat(),
                                         .thickness = thickness}),
                              solid(thin_material(nu), thickness));
    plate.supports.push_back({.group = "outline", .support = support});
    return plate;
  };
  return modes_of(name, model, to_lambda(nu));
}

} // namespace

std::vector<CaseModel> thin_plates()
{
  return {rectangle("thin square SSSS", "SSSS", 1.0, 20, 20),
          rectangle("thin square FFFF", "FFFF", 1.0, 20, 20),
          rectangle("thin square CCCC", "CCCC", 1.0, 24, 24),
          rectangle("thin square CFFF", "CFFF", 1.0, 20, 20),
          rectangle("thin square SCSC", "SCSC", 1.0, 22, 22),
          rectangle("thin square SFSF", "SFSF", 1.0, 20, 20),
          rectangle("thin square CFCF", "CFCF", 1.0, 20, 20),
          rectangle("thin square CCFF", "CCFF", 1.0, 20, 20),
          rectangle("thin rectangle 1.5 SSSS", "SSSS", 1.5, 24, 16),
          rectangle("thin rectangle 1.5 CCCC", "CCCC", 1.5, 28, 20),
          rectangle("thin rectangle 1.5 FFFF", "FFFF", 1.5, 24, 16),
          rectangle("thin rectangle 2 FFFF", "FFFF", 2.0, 26, 13),
          rectangle("thin rectangle 2.5 FFFF", "FFFF", 2.5, 28, 12),
          rectangle("thin rectangle 2 CFFF", "CFFF", 2.0, 26, 13),
          rhombus("thin rhombus 15 CCCC", "CCCC", 15.0),
          rhombus("thin rhombus 30 CCCC", "CCCC", 30.0),
          rhombus("thin rhombus 45 CCCC", "CCCC", 45.0),
          rhombus("thin rhombus 15 FFFF", "FFFF", 15.0),
          rhombus("thin rhombus 30 FFFF", "FFFF", 30.0),
          rhombus("thin rhombus 45 FFFF", "FFFF", 45.0),
          rhombus("thin rhombus 15 CFFF", "FCFF", 15.0),
          rhombus("thin rhombus 30 CFFF", "FCFF", 30.0),
          rhombus("thin rhombus 45 CFFF", "FCFF", 45.0),
          circle("thin circle clamped", EdgeSupport::clamped, poisson),
          circle("thin circle hinged", EdgeSupport::hinged, poisson),
          circle("thin circle free", EdgeSupport::free, poisson),
          circle("thin circle free, nu 1/3", EdgeSupport::free, 1.0 / 3.0)};
}

} // namespace plate::validation
