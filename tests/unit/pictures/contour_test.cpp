// SPDX-License-Identifier: MPL-2.0
#include "pictures/contour.h"
#include "sample_plate.h"

#include <plate/core/error.h>

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <numbers>

using namespace plate;
using test::at_nodes;
using test::make_mesh;

namespace
{

double total_length(const std::vector<Polyline>& lines)
{
  double sum = 0.0;
  for (const Polyline& line : lines)
    sum += length(line);
  return sum;
}

/// Signed area inside closed lines (Gauss's shoelace formula): positive where they run counter-clockwise.
double total_area(const std::vector<Polyline>& lines)
{
  double sum = 0.0;
  for (const Polyline& line : lines)
  {
    CHECK(line.closed);
    const std::size_t n = line.points.size();
    for (std::size_t i = 0; i < n; ++i)
    {
      const Eigen::Vector2d& p = line.points[i];
      const Eigen::Vector2d& q = line.points[(i + 1) % n];
      sum += 0.5 * (p[0] * q[1] - p[1] * q[0]);
    }
  }
  return sum;
}

} // namespace

TEST_CASE("The nodal lines of x y are the two axes, over their whole length")
{
  for (const int cells : {4, 5}) // even: the axes are mesh lines; odd: they cross the cells
  {
    CAPTURE(cells);
    const ShellMesh mesh = make_mesh({.length = 0.4, .width = 0.2, .rise = 0.02, .num_x = cells, .num_y = cells});
    const RefinedSurface surface = refine(mesh, 6);
    const std::vector<double> values = at_nodes(mesh, [](double x, double y) { return x * y; });
    const std::vector<Polyline> lines = ContouredField(surface, values).lines(0.0);
    CHECK(total_length(lines) == doctest::Approx(0.4 + 0.2).epsilon(1e-9));
    double farthest_x = 0.0;
    double farthest_y = 0.0;
    for (const Polyline& line : lines)
      for (const Eigen::Vector2d& point : line.points)
      {
        CHECK(std::min(std::abs(point[0]), std::abs(point[1])) < 1e-9);
        farthest_x = std::max(farthest_x, std::abs(point[0]));
        farthest_y = std::max(farthest_y, std::abs(point[1]));
      }
    CHECK(farthest_x == doctest::Approx(0.2).epsilon(1e-12));
    CHECK(farthest_y == doctest::Approx(0.1).epsilon(1e-12));
  }
}

TEST_CASE("A region all at one level has no stray contours")
{
  // 2.8 mm for x <= 0.05 m and rising from there, in m and so not exact in binary; 3.0 is at x = 0.052 m only.
  const ShellMesh mesh = make_mesh({.length = 0.4, .width = 0.2, .num_x = 8, .num_y = 5});
  const std::vector<double> values =
      at_nodes(mesh, [](double x, double) { return x < 0.0501 ? 0.0028 : 0.0028 + 0.1 * (x - 0.05); });
  const RefinedSurface surface = refine(mesh, 6);
  const ContouredField field(surface, values);
  CHECK(field.lines(0.0028).empty());
  CHECK(total_length(field.lines(0.0030)) == doctest::Approx(0.2).epsilon(1e-9));
}

TEST_CASE("A step between plateaus does not ring in a map kept within its nodes")
{
  // A cubic through a step overshoots it; what is kept within the nodes may not, anywhere.
  const ShellMesh mesh = make_mesh({.length = 0.4, .width = 0.2, .num_x = 8, .num_y = 5});
  const std::vector<double> values = at_nodes(mesh, [](double x, double y) { return x + 0.7 * y < 0.03 ? 2.5 : 3.9; });
  const RefinedSurface surface = refine(mesh, 9);
  const ContouredField ringing(surface, values);
  CHECK(ringing.lowest() < 2.4);
  CHECK(ringing.highest() > 4.0);
  const ContouredField field(surface, values, Interpolation::within_nodes);
  CHECK(field.lowest() == 2.5);
  CHECK(field.highest() == 3.9);
  CHECK(field.lines(2.5).empty());
  // Contours of all levels stay between the nodes beside the step, one node apart (0.4 m / 24 and 0.2 m / 15).
  for (const double level : {2.6, 3.2, 3.8})
  {
    const std::vector<Polyline> lines = field.lines(level);
    REQUIRE(lines.size() == 1);
    for (const Eigen::Vector2d& point : lines[0].points)
      CHECK(std::abs(point[0] + 0.7 * point[1] - 0.03) <= 0.4 / 24 + 0.7 * 0.2 / 15);
  }
}

TEST_CASE("A circular contour lies on the circle and its chords fall short by the second order only")
{
  const ShellMesh mesh = make_mesh({.length = 0.4, .width = 0.4, .rise = 0.02, .num_x = 7, .num_y = 6});
  const std::vector<double> values = at_nodes(mesh, [](double x, double y) { return x * x + y * y; });
  constexpr double radius = 0.15;
  const double circumference = 2.0 * std::numbers::pi * radius;
  double shortfall[2] = {};
  for (int k = 0; k < 2; ++k)
  {
    const RefinedSurface surface = refine(mesh, 3 * (k + 1));
    const std::vector<Polyline> lines = ContouredField(surface, values).lines(radius * radius);
    REQUIRE(lines.size() == 1);
    CHECK(lines[0].closed);
    for (const Eigen::Vector2d& point : lines[0].points)
      CHECK(point.norm() == doctest::Approx(radius).epsilon(1e-11));
    shortfall[k] = circumference - length(lines[0]);
  }
  // A chord of a circle is short by chord³/(24 R²): halving the triangles leaves about a quarter.
  CHECK(shortfall[0] > 0.0);
  CHECK(shortfall[0] < 2e-3 * circumference);
  CHECK(shortfall[0] / shortfall[1] == doctest::Approx(4.0).epsilon(0.2));
}

TEST_CASE("The boundary has the area that geometry gives the plate, holes left out")
{
  const test::SamplePlate plate{.length = 0.36, .width = 0.21, .num_x = 12, .num_y = 7, .hole = {2, 5, 1, 3}};
  const ShellMesh mesh = make_mesh(plate);
  const RefinedSurface surface = refine(mesh, 6);
  const double cell = (plate.length / 12) * (plate.width / 7);
  CHECK(total_area(boundary_lines(surface)) == doctest::Approx((12 * 7 - 3 * 2) * cell).epsilon(1e-12));
  CHECK(boundary_lines(surface).size() == 2);
}

TEST_CASE("The outline of the triangles under a bar is the rectangle of its cells")
{
  const ShellMesh mesh = make_mesh({.length = 0.36, .width = 0.21, .bar = {2, 10, 4, 5}});
  const RefinedSurface surface = refine(mesh, 3);
  const std::vector<Polyline> lines = outline_of(surface, mesh.bars.at(0).triangles);
  REQUIRE(lines.size() == 1);
  CHECK(length(lines[0]) == doctest::Approx(2.0 * (8 * 0.03 + 0.03)).epsilon(1e-12));
}

TEST_CASE("Simplifying a line keeps it within the tolerance and keeps its corners")
{
  Polyline arc;
  for (int i = 0; i <= 900; ++i)
    arc.points.emplace_back(100.0 * std::cos(0.001 * i), 100.0 * std::sin(0.001 * i));
  const Polyline fewer = simplified(arc, 0.05);
  CHECK(fewer.points.front() == arc.points.front());
  CHECK(fewer.points.back() == arc.points.back());
  // A chord spanning the angle a has the sagitta R (1 - cos(a/2)): at most 0.0633 rad for 0.05, so at least 15 chords.
  CHECK(fewer.points.size() >= 16);
  CHECK(fewer.points.size() < 60);
  for (std::size_t i = 1; i < fewer.points.size(); ++i)
    CHECK((0.5 * (fewer.points[i] + fewer.points[i - 1])).norm() > 100.0 - 0.0501);
}

TEST_CASE("A field that does not fit the mesh or is not finite is refused")
{
  const ShellMesh mesh = make_mesh({});
  const RefinedSurface surface = refine(mesh, 3);
  std::vector<double> values(mesh.nodes.size() - 1, 1.0);
  CHECK_THROWS_AS(ContouredField(surface, values), InvalidInput);
  values.push_back(std::numeric_limits<double>::quiet_NaN());
  CHECK_THROWS_AS(ContouredField(surface, values), InvalidInput);
}
