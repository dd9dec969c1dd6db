// SPDX-License-Identifier: MPL-2.0
#include "relative.h"
#include "sample_cavities.h"

#include <plate/air/hole_in_cavity.h>
#include <plate/core/error.h>
#include <plate/solvers/coupled_modes.h>

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace plate;

namespace
{

using std::numbers::pi;
constexpr double length = 0.35; // of the box
constexpr double width = 0.2;
constexpr double height = 0.035;
constexpr double radius = 0.015;

constexpr double longest = 8000.0; // of the wave numbers summed [1/m]

/// Inertance over density of the air inside a box between two round holes in its lid, in closed form: cosines along x
/// and y, the flow over a hole as 1 / sqrt(r^2 - s^2), whose transform is sin(k r) / (k r), and coth(k h) / k under the
/// lid.
double between_in_box(const Eigen::Vector2d& a, const Eigen::Vector2d& b)
{
  const double area = length * width;
  double sum = height / 3.0; // pressures that vary along z alone
  for (int l = 0; l * pi / length < longest; ++l)
    for (int m = (l == 0 ? 1 : 0); m * pi / width < longest; ++m)
    {
      const double kx = l * pi / length;
      const double ky = m * pi / width;
      const double k = std::hypot(kx, ky);
      if (k > longest)
        break;
      const double norm = (l == 0 ? 1.0 : 2.0) * (m == 0 ? 1.0 : 2.0);
      const auto shape = [&](const Eigen::Vector2d& at)
      {
        return std::cos(kx * (at.x() + 0.5 * length)) * std::cos(ky * (at.y() + 0.5 * width)) * std::sin(k * radius) /
               (k * radius);
      };
      sum += norm * shape(a) * shape(b) / (k * std::tanh(k * height));
    }
  return sum / area;
}

/// The same of one hole. Shorter waves stand for the rest of the half-space: 1 / (4 pi r^2 longest).
double inside_of_box(const Eigen::Vector2d& at)
{
  return between_in_box(at, at) + 1.0 / (4.0 * pi * radius * radius * longest);
}

/// The same from mesh and hole: what the mesh shows, and what is added.
double inside_of_mesh(const CavitySpace& space, const Eigen::Vector2d& at, double blur)
{
  const HoleFlow flow = hole_flow({{.points = test::circle(radius, at)}});
  const HolesInCavity holes = holes_in_cavity(space, flow, blur);
  const Eigen::MatrixXd mesh = holes.flow.transpose() * static_pressures(space, holes.flow);
  return mesh(0, 0) + holes.inertance(0, 0) - flow.one_side(0, 0);
}

} // namespace

TEST_CASE("the inner end of a hole in a lid is counted once, whatever the mesh, its degree and the blur")
{
  const Eigen::Vector2d at(0.05, 0.025);
  const double exact = inside_of_box(at);
  for (const int cells : {10, 20})
    for (const int degree : {0, 2})
      for (const double blur : {6e-3, 9e-3})
      {
        CAPTURE(cells);
        CAPTURE(degree);
        CAPTURE(blur);
        const CavityMesh mesh = test::box(2 * cells, cells);
        CHECK(inside_of_mesh(CavitySpace(mesh, degree), at, blur) == test::relative(exact, 4e-3));
      }
}

TEST_CASE("two holes: what the mesh shows between them and what is added make up the box's potential")
{
  const Eigen::Vector2d a(0.02, 0.04);
  const Eigen::Vector2d b(0.02, -0.04);
  const CavityMesh mesh = test::box(30, 16);
  const CavitySpace space(mesh, 0);
  const HoleFlow flow = hole_flow({{.points = test::circle(radius, a)}, {.points = test::circle(radius, b)}});
  const HolesInCavity holes = holes_in_cavity(space, flow);
  const Eigen::MatrixXd inside =
      holes.flow.transpose() * static_pressures(space, holes.flow) + holes.inertance - flow.one_side;
  CHECK(inside(0, 1) == doctest::Approx(between_in_box(a, b)).epsilon(1e-2).scale(inside(0, 0)));
  CHECK(inside(0, 0) == test::relative(inside_of_box(a), 4e-3));
}

TEST_CASE("the neck and the outer end of a hole in a cavity count once")
{
  const CavityMesh mesh = test::box(12, 8);
  const CavitySpace space(mesh, 0);
  const Eigen::Vector2d at(0.05, 0.025);
  const HoleFlow thin = hole_flow({{.points = test::circle(radius, at)}});
  const HoleFlow thick = hole_flow({{.points = test::circle(radius, at), .wall_thickness = 4e-3}});
  const double neck = holes_in_cavity(space, thick).inertance(0, 0) - holes_in_cavity(space, thin).inertance(0, 0);
  CHECK(neck == test::relative(4e-3 / (pi * radius * radius), 5e-3));
  HoleFlow without_outside = thin;
  without_outside.one_side.setZero();
  const double ends =
      holes_in_cavity(space, thin).inertance(0, 0) - holes_in_cavity(space, without_outside).inertance(0, 0);
  CHECK(ends == test::relative(2.0 / (4.0 * radius), 5e-3)); // outer end, and the inner of a half-space
}

TEST_CASE("a hole beside the cavity is refused")
{
  const CavityMesh mesh = test::box(6, 4);
  const CavitySpace space(mesh, 0);
  const HoleFlow aside = hole_flow({{.points = test::circle(radius, {0.18, 0.0})}});
  CHECK_THROWS_AS(static_cast<void>(holes_in_cavity(space, aside)), InvalidInput);
  const HoleFlow inside = hole_flow({{.points = test::circle(radius, {0.1, 0.0})}});
  CHECK_THROWS_AS(static_cast<void>(holes_in_cavity(space, inside, 0.0)), InvalidInput);
}
