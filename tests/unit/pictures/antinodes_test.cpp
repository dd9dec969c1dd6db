// SPDX-License-Identifier: MPL-2.0
#include "pictures/antinodes.h"
#include "pictures/mode_drawing.h"
#include "relative.h"
#include "sample_plate.h"

#include <plate/core/error.h>

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace plate;
using test::at_nodes;
using test::make_mesh;

namespace
{
constexpr double half_width = 0.005; // of a sign [m]
using std::numbers::pi;
} // namespace

TEST_CASE("Each lobe of a product of sines gets one sign, at its middle and of its sense")
{
  // sin(2 pi x / 0.4) sin(pi (y + 0.1) / 0.2): extrema +1 at (0.1, 0) and -1 at (-0.1, 0).
  const ShellMesh mesh = make_mesh({.length = 0.4, .width = 0.2, .num_x = 13, .num_y = 7});
  const std::vector<double> values =
      at_nodes(mesh, [](double x, double y) { return std::sin(2 * pi * x / 0.4) * std::sin(pi * (y + 0.1) / 0.2); });
  const RefinedSurface surface = refine(mesh, 6);
  const std::vector<Antinode> signs = find_antinodes(ContouredField(surface, values), half_width);
  REQUIRE(signs.size() == 2);
  for (const Antinode& sign : signs)
  {
    const Eigen::Vector2d extremum(sign.value > 0.0 ? 0.1 : -0.1, 0.0);
    CHECK((sign.position - extremum).norm() < 0.005); // a refined triangle has 5 mm
    CHECK(std::abs(sign.value) > 0.99);
  }
  CHECK(signs[0].value * signs[1].value < 0.0);
}

TEST_CASE("Signs of antinodes at the edge move inward, clear of edge and nodal lines, one in each quadrant")
{
  const ShellMesh mesh = make_mesh({.length = 0.4, .width = 0.2});
  const std::vector<double> values = at_nodes(mesh, [](double x, double y) { return x * y / 0.02; });
  const RefinedSurface surface = refine(mesh, 6);
  const std::vector<Antinode> signs = find_antinodes(ContouredField(surface, values), half_width);
  REQUIRE(signs.size() == 4);
  int quadrants = 0;
  for (const Antinode& sign : signs)
  {
    const double x = sign.position[0];
    const double y = sign.position[1];
    CHECK(sign.value == doctest::Approx(x * y / 0.02));
    quadrants |= 1 << ((x > 0.0 ? 1 : 0) + (y > 0.0 ? 2 : 0));
    CHECK(std::abs(x) < 0.2 - half_width);
    CHECK(std::abs(y) < 0.1 - half_width);
    CHECK(std::abs(x) > 0.2 - 6.0 * half_width); // still at the corner
    CHECK(std::abs(y) > 0.1 - 6.0 * half_width);
  }
  CHECK(quadrants == 15);
}

TEST_CASE("No two signs overlap, however many lobes there are")
{
  const ShellMesh mesh = make_mesh({.length = 0.4, .width = 0.2, .num_x = 20, .num_y = 10});
  const std::vector<double> values =
      at_nodes(mesh, [](double x, double y) { return std::cos(60.0 * x + 20.0 * y) * std::cos(80.0 * y); });
  const RefinedSurface surface = refine(mesh, 3);
  const std::vector<Antinode> signs = find_antinodes(ContouredField(surface, values), half_width);
  CHECK(signs.size() > 20);
  for (std::size_t i = 0; i < signs.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      CHECK((signs[i].position - signs[j].position).norm() >= 2.0 * half_width);
}

TEST_CASE("The shape of a picture has +1 at its largest displacement, the first of equals deciding")
{
  const ShellMesh mesh = make_mesh({.num_x = 1, .num_y = 1});
  REQUIRE(mesh.nodes.size() == 16);
  std::vector<double> values(16, 0.5);
  values[3] = -4.0;
  values[9] = 4.0 * (1.0 + 1e-9); // equal but for rounding
  std::vector<double> shape = picture_shape(mesh, values);
  CHECK(shape[3] == doctest::Approx(1.0));
  CHECK(shape[9] == doctest::Approx(-1.0));
  CHECK(shape[0] == test::relative(-0.125, 1e-8));
  values[9] = 4.1; // clearly larger
  shape = picture_shape(mesh, values);
  CHECK(shape[9] == doctest::Approx(1.0));
  CHECK(shape[3] == doctest::Approx(-4.0 / 4.1));
  CHECK_THROWS_AS((void)picture_shape(mesh, std::vector<double>(16, 0.0)), InvalidInput);
}
