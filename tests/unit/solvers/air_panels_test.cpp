// SPDX-License-Identifier: MPL-2.0
#include "panel_mesh.h"
#include "panel_potential.h"
#include "relative.h"
#include "sample_models.h"

#include <plate/elements/quadrature.h>

#include <doctest/doctest.h>

#include <Eigen/Geometry>

#include <cmath>
#include <set>

using namespace plate;

namespace
{

Panel panel(const Eigen::Vector3d& a, const Eigen::Vector3d& b, const Eigen::Vector3d& c)
{
  return panels_with_areas({.vertices = {a, b, c}, .triangles = {{0, 1, 2}}}).front();
}

Eigen::Vector3d place(const Panel& p, const TrianglePoint& at)
{
  return p.corner[0] + at.xi * (p.corner[1] - p.corner[0]) + at.eta * (p.corner[2] - p.corner[0]);
}

/// Integral of a function over a panel by 192 points.
template <class Function>
double integral(const Panel& p, Function function)
{
  double sum = 0.0;
  for (const TrianglePoint& at : fine_triangle_points())
    sum += 2.0 * p.area * at.weight * function(place(p, at));
  return sum;
}

double area(const PanelMesh& mesh)
{
  double sum = 0.0;
  for (const Panel& p : panels_with_areas(mesh))
    sum += p.area;
  return sum;
}

PanelMesh plate_with_slot()
{
  test::GridPlate grid = {.x = {}, .y = {}, .surface = test::biparabolic(0.3, 0.2, 0.02), .thickness = 3e-3};
  for (int i = 0; i <= 15; ++i)
    grid.x.push_back(0.02 * i - 0.15);
  for (int i = 0; i <= 10; ++i)
    grid.y.push_back(0.02 * i - 0.10);
  grid.keep = [](double x, double y) { return !(std::abs(x) < 0.05 && y > 0.04 && y < 0.06); };
  return panels_of(test::grid_mesh(grid));
}

} // namespace

TEST_CASE("1/r over a triangle from a corner")
{
  // In polar coordinates about a right corner with unit sides: integral of h/cos(t) over -45...45 deg with the height
  // h = 1/sqrt(2), 2 h ln(1 + sqrt(2)).
  const Panel right = panel({0, 0, 0}, {1, 0, 0}, {0, 1, 0});
  CHECK(inverse_distance(right, right.corner[0]) == doctest::Approx(std::sqrt(2.0) * std::log(1.0 + std::sqrt(2.0))));
}

TEST_CASE("1/r over a triangle from points beside it, by quadrature")
{
  const Panel p = panel({0.1, 0.2, -0.1}, {1.1, 0.1, 0.3}, {0.4, 0.9, 0.2});
  for (const Eigen::Vector3d& point :
       {Eigen::Vector3d(0.5, 0.4, 0.8), {0.5, 0.4, -0.7}, {2.0, 0.3, 0.1}, {-1.0, 1.0, 1.0}})
    CHECK(
        inverse_distance(p, point) ==
        doctest::Approx(integral(p, [&](const Eigen::Vector3d& x) { return 1.0 / (x - point).norm(); })).epsilon(1e-6));
}

TEST_CASE("1/r over two panels: the same, neighbours, further off")
{
  const Panel p = panel({0, 0, 0}, {1.2, 0.1, 0}, {0.3, 0.8, 0.1});
  const auto over = [&](const Panel& other)
  { return integral(p, [&](const Eigen::Vector3d& x) { return inverse_distance(other, x); }); };
  CHECK(inverse_distance(p, p) == doctest::Approx(over(p)).epsilon(1e-3));
  const Panel beside = panel({1.2, 0.1, 0}, {1.3, 0.9, 0.2}, {0.3, 0.8, 0.1});
  CHECK(inverse_distance(p, beside) == doctest::Approx(over(beside)).epsilon(1e-3));
  for (const double distance : {2.0, 3.0, 6.0, 8.0, 20.0})
  {
    Panel away = beside;
    for (Eigen::Vector3d& corner : away.corner)
      corner.x() += distance;
    away.centre.x() += distance;
    CHECK(inverse_distance(p, away) == test::relative(over(away), 1.5e-3));
  }
}

TEST_CASE("coarser panels keep area, holes and the side they face")
{
  const PanelMesh fine = plate_with_slot();
  const PanelMesh coarse = coarsened(fine, 400);
  CHECK(coarse.triangles.size() <= 400);
  CHECK(area(coarse) == test::relative(area(fine), 2e-3));
  std::set<std::pair<int, int>> sides;
  for (const auto& t : coarse.triangles)
    for (std::size_t i = 0; i < 3; ++i)
      sides.insert({std::min(t[i], t[(i + 1) % 3]), std::max(t[i], t[(i + 1) % 3])});
  // Euler: one plate with one hole.
  CHECK(static_cast<int>(coarse.vertices.size()) - static_cast<int>(sides.size()) +
            static_cast<int>(coarse.triangles.size()) ==
        0);
  for (const Panel& p : panels_with_areas(coarse))
    CHECK(p.normal.z() > 0.5);
}

TEST_CASE("interpolation on panels reproduces linear fields of a flat plate")
{
  PanelMesh flat = plate_with_slot();
  for (Eigen::Vector3d& vertex : flat.vertices)
    vertex.z() = 0.0;
  const PanelMesh coarse = coarsened(flat, 300);
  const auto P = interpolation(coarse, flat.vertices);
  Eigen::VectorXd field(static_cast<Eigen::Index>(coarse.vertices.size()));
  for (std::size_t v = 0; v < coarse.vertices.size(); ++v)
    field(static_cast<Eigen::Index>(v)) = 2.0 * coarse.vertices[v].x() - coarse.vertices[v].y() + 0.3;
  const Eigen::VectorXd at_nodes = P * field;
  for (std::size_t v = 0; v < flat.vertices.size(); ++v)
    CHECK(at_nodes(static_cast<Eigen::Index>(v)) ==
          doctest::Approx(2.0 * flat.vertices[v].x() - flat.vertices[v].y() + 0.3).epsilon(1e-9));
}
