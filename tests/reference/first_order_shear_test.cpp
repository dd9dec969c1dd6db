// SPDX-License-Identifier: MPL-2.0
// Plates of first-order shear theory: sources in data/first_order_shear.csv.
#include "reference_data.h"
#include "sample_models.h"

#include <plate/solvers/modal.h>

#include <doctest/doctest.h>

#include <string>
#include <utility>
#include <vector>

using namespace plate;

namespace
{

struct Size
{
  double length; // [m]
  double width;  // [m]
};

Model free_plate(Size size, const test::Surface& surface, const Laminate& laminate, int cells_x, int cells_y)
{
  const double thickness = total_thickness(laminate);
  const double strip = 1.2 * thickness;
  return test::plate_model(test::grid_mesh({.x = test::lines_with_strips(0.5 * size.length, cells_x, strip),
                                            .y = test::lines_with_strips(0.5 * size.width, cells_y, strip),
                                            .surface = surface,
                                            .thickness = thickness}),
                           laminate);
}

/// z = H (1 - (2x/a)^2 - (2y/a)^2).
test::Surface paraboloid(double a, double height)
{
  return {.position = [=](double x, double y)
          { return Eigen::Vector3d(x, y, height * (1.0 - 4.0 * (x * x + y * y) / (a * a))); },
          .normal =
              [=](double x, double y)
          {
            const double c = 8.0 * height / (a * a);
            return Eigen::Vector3d(c * x, c * y, 1.0).normalized();
          }};
}

const std::vector<double> four_directions = {0, 45, -45, 90, 90, -45, 45, 0};

void check(const Model& model, const std::string& name)
{
  test::check_modes(model, "first_order_shear.csv", name);
}

} // namespace

TEST_CASE("free spruce rectangles")
{
  const Material spruce = test::quarter_cut_spruce();
  check(free_plate({0.35, 0.13}, test::flat(), test::solid(spruce, 3e-3), 14, 6), "S1");
  check(free_plate({0.30, 0.20}, test::flat(), test::solid(spruce, 2.5e-3), 12, 8), "S2");
  check(free_plate({0.35, 0.20}, test::flat(), test::solid(spruce, 3e-3), 14, 8), "S4");
}

TEST_CASE("free laminate of four directions")
{
  check(free_plate({0.30, 0.20}, test::flat(), test::stack(test::carbon_epoxy(), 0.125e-3, four_directions), 12, 8),
        "C2");
}

TEST_CASE("free isotropic square with its edge layer")
{
  check(free_plate({10.0, 10.0}, test::flat(), test::solid(test::isotropic(200e9, 0.3, 8000.0), 0.05), 14, 14), "FV12");
}

TEST_CASE("arched spruce rectangles")
{
  const Material spruce = test::quarter_cut_spruce();
  check(free_plate({0.35, 0.20}, test::biparabolic(0.35, 0.20, 0.010), test::solid(spruce, 3e-3), 14, 8), "A H10");
  check(free_plate({0.35, 0.20}, test::biparabolic(0.35, 0.20, 0.020), test::solid(spruce, 3e-3), 14, 8), "A H20");
}

TEST_CASE("arched laminate of four directions")
{
  check(free_plate({0.35, 0.20}, test::biparabolic(0.35, 0.20, 0.015),
                   test::stack(test::carbon_epoxy(), 0.125e-3, four_directions), 18, 10),
        "C");
}

TEST_CASE("isotropic paraboloid over a square")
{
  check(free_plate({1.0, 1.0}, paraboloid(1.0, 0.05), test::solid(test::isotropic(70e9, 0.3, 2700.0), 10e-3), 10, 10),
        "E");
}

TEST_CASE("thick square resting on its edges: softer than the benchmark's hard support, in-plane modes as published")
{
  // [NAFEMS1989] test FV52: side 10 m, thickness 1 m, steel. In-plane modes 193.59, 206.19, 206.19 Hz are published for
  // edges that hold w only. Bending with such edges, first-order theory, computed independently for this
  // project: 44.11, 106.98 (twice), 162.33 Hz; the published 45.897 Hz belongs to edges that hold the tangential
  // rotation too.
  Model model = free_plate({10.0, 10.0}, test::flat(), test::solid(test::isotropic(200e9, 0.3, 8000.0), 1.0), 8, 8);
  test::support_all_sides(model, EdgeSupport::rest);
  const System system = assemble(model);
  CHECK(system.rigid_motions.cols() == 3);
  const ModalResult modes = solve_modes(system, {.num_modes = 12});
  const double bending[] = {44.11, 106.98, 106.98, 162.33};
  for (int i = 0; i < 4; ++i)
    CHECK(modes.frequencies_hz(i) == doctest::Approx(bending[i]).epsilon(5e-4));
  // Exact plane stress, computed independently for this project: 193.584, 206.182 (twice), 219.265 Hz.
  for (const auto& [frequency, count] : {std::pair(193.584, 1), std::pair(206.182, 2), std::pair(219.265, 1)})
    CHECK(((modes.frequencies_hz.array() / frequency - 1.0).abs() < 1e-4).count() == count);
}
