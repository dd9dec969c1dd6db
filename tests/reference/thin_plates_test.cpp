// SPDX-License-Identifier: MPL-2.0
// Thin plates: sources in data/thin_plates.csv.
#include "reference_data.h"
#include "sample_models.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace plate;

namespace
{

constexpr double side = 1.0;         // [m]
constexpr double thickness = 2.5e-3; // [m]
const Material material = test::isotropic(70e9, 0.3, 2700.0);

/// Square with strips of 1.2 thicknesses along its edges.
Model thin_square(int cells = 20)
{
  const std::vector<double> lines = test::lines_with_strips(0.5 * side, cells, 1.2 * thickness);
  return test::plate_model(test::grid_mesh({.x = lines, .y = lines, .surface = test::flat(), .thickness = thickness}),
                           test::solid(material, thickness));
}

/// Frequency to omega a^2 sqrt(rho h / D).
double to_lambda()
{
  const double D = material.elastic.E1 * std::pow(thickness, 3) / (12.0 * (1.0 - 0.3 * 0.3));
  return 2.0 * std::numbers::pi * side * side * std::sqrt(material.density * thickness / D);
}

} // namespace

TEST_CASE("thin square, hinged on four sides")
{
  Model model = thin_square();
  test::support_all_sides(model, EdgeSupport::hinged);
  test::check_modes(model, "thin_plates.csv", "SSSS", to_lambda());
}

TEST_CASE("thin square, free")
{
  test::check_modes(thin_square(), "thin_plates.csv", "FFFF", to_lambda());
}

TEST_CASE("thin square, clamped on four sides")
{
  Model model = thin_square(24);
  test::support_all_sides(model, EdgeSupport::clamped);
  test::check_modes(model, "thin_plates.csv", "CCCC", to_lambda());
}

TEST_CASE("thin square, clamped on one side")
{
  Model model = thin_square();
  model.supports.push_back({.group = "y-", .support = EdgeSupport::clamped});
  test::check_modes(model, "thin_plates.csv", "CFFF", to_lambda());
}

TEST_CASE("thin spruce rectangle with the grain turned by 15 degrees, free")
{
  const double thin = 0.1e-3;
  const double strip = 1.2 * thin;
  const test::GridPlate plate = {.x = test::lines_with_strips(0.175, 24, strip),
                                 .y = test::lines_with_strips(0.065, 12, strip),
                                 .surface = test::flat(),
                                 .thickness = thin};
  test::check_modes(test::plate_model(test::grid_mesh(plate), test::solid(test::quarter_cut_spruce(), thin, 15.0)),
                    "thin_plates.csv", "S5", 3e-3 / thin);
}
