// SPDX-License-Identifier: MPL-2.0
// Thick curved shells in states whose strain is known at every distance from the mid-surface. The metric through the
// thickness enters with (t/R)^2: 9 % here, so the energies tell whether it is right. What is left is the truncation
// after z^4 and the interpolation of the surface: a curved isoparametric shell with a tangential change of its
// directors represents exactly the affine fields that leave the directors' length alone, on the surface that it
// interpolates. Here membrane strain, bending, twist and transverse shear vary over known surfaces, on even and on
// distorted meshes.
#include "sample_models.h"

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

using namespace plate;

namespace
{

constexpr double radius = 0.2;     // [m]
constexpr double thickness = 0.06; // [m]
constexpr double E = 10e9;         // [Pa]
constexpr double nu = 0.3;
constexpr double angle = 0.6;  // of the patch [rad]
constexpr double length = 0.1; // along the axis [m]

Material material()
{
  return test::isotropic(E, nu, 500.0);
}

std::vector<double> lines(double side, int cells)
{
  std::vector<double> out;
  for (int i = 0; i <= cells; ++i)
    out.push_back(side * (static_cast<double>(i) / cells - 0.5));
  return out;
}

/// Lines of the grid as they are, or bent across each other inside the patch: edges of all elements curved and aslant.
enum class Grid
{
  even,
  distorted
};

test::Surface drawn_on(const test::Surface& surface, Grid grid, double side_x, double side_y)
{
  if (grid == Grid::even)
    return surface;
  const auto moved = [=](double x, double y)
  {
    const double u = 2.0 * x / side_x;
    const double v = 2.0 * y / side_y;
    const double inside = (1.0 - u * u) * (1.0 - v * v); // zero on the outline
    return Eigen::Vector2d(x + 0.06 * side_x * inside * std::sin(5.0 * v + 2.0 * u + 0.4),
                           y + 0.06 * side_y * inside * std::cos(4.0 * u - 3.0 * v));
  };
  return {.position = [=](double x, double y) { return surface.position(moved(x, y).x(), moved(x, y).y()); },
          .normal = [=](double x, double y) { return surface.normal(moved(x, y).x(), moved(x, y).y()); }};
}

/// Part of a cylinder about the x axis; y of the grid is the arc.
Model cylinder(Grid grid)
{
  const test::Surface surface = {
      .position = [](double x, double y)
      { return Eigen::Vector3d(x, radius * std::sin(y / radius), radius * std::cos(y / radius)); },
      .normal = [](double, double y) { return Eigen::Vector3d(0.0, std::sin(y / radius), std::cos(y / radius)); }};
  const double arc = angle * radius;
  const int finer = grid == Grid::even ? 1 : 2; // bent lines follow the surface less well
  return test::plate_model(test::grid_mesh({.x = lines(length, 3 * finer),
                                            .y = lines(arc, 10 * finer),
                                            .surface = drawn_on(surface, grid, length, arc),
                                            .thickness = thickness}),
                           test::solid(material(), thickness));
}

/// Part of a sphere, projected from its centre on the plane z = 1.
Model sphere_cap(Grid grid)
{
  const auto normal = [](double x, double y) { return Eigen::Vector3d(x, y, 1.0).normalized(); };
  const test::Surface surface = {.position = [=](double x, double y) { return Eigen::Vector3d(radius * normal(x, y)); },
                                 .normal = normal};
  const int finer = grid == Grid::even ? 1 : 2;
  const std::vector<double> side = lines(angle, 8 * finer);
  return test::plate_model(
      test::grid_mesh({.x = side, .y = side, .surface = drawn_on(surface, grid, angle, angle), .thickness = thickness}),
      test::solid(material(), thickness));
}

double energy(const Model& model, const test::Field& field)
{
  const System system = assemble(model);
  const Eigen::VectorXd u = test::unknowns_of(model, system.dofs, field);
  return 0.5 * u.dot(system.K.selfadjointView<Eigen::Lower>() * u);
}

double around(const Eigen::Vector3d& x)
{
  return std::atan2(x.y(), x.z());
}
Eigen::Vector3d tangent(const Eigen::Vector3d& x)
{
  return {0.0, std::cos(around(x)), -std::sin(around(x))};
}

} // namespace

TEST_CASE("a thick sphere that breathes strains by w / (R + z)")
{
  // Energy per volume E/(1 - nu) (w/(R + z))^2 in a volume that grows as (1 + z/R)^2: E t/(1 - nu) (w/R)^2 per area.
  // Solid angle of the cap: 4 asin(sin^2 a) for a square of half angle a, tan a = angle/2.
  const double w = 1e-4;
  const double a = std::atan(0.5 * angle);
  const double area = radius * radius * 4.0 * std::asin(std::sin(a) * std::sin(a));
  const double expected = E * thickness / (1.0 - nu) * w * w / (radius * radius) * area;
  for (const Grid grid : {Grid::even, Grid::distorted})
    CHECK(energy(sphere_cap(grid),
                 {.displacement = [&](const Eigen::Vector3d& x) { return Eigen::Vector3d(w * x.normalized()); },
                  .director_change = [](const Eigen::Vector3d&) { return Eigen::Vector3d(0.0, 0.0, 0.0); }}) ==
          doctest::Approx(expected).epsilon(1e-5));
}

TEST_CASE("a thick cylinder that breathes strains by w / (R + z)")
{
  // Energy E/(2 (1 - nu^2)) (w/(R + z))^2 in a volume that grows as 1 + z/R: the integral is a logarithm. Strain
  // to second order in z leaves 2/5 (t/2R)^4 = 2.0e-4 of it.
  const double w = 1e-4;
  const double area = length * angle * radius;
  const double integral = w * w / radius * std::log((radius + 0.5 * thickness) / (radius - 0.5 * thickness));
  const double expected = 0.5 * E / (1.0 - nu * nu) * integral * area;
  for (const Grid grid : {Grid::even, Grid::distorted})
    CHECK(energy(cylinder(grid),
                 {.displacement = [&](const Eigen::Vector3d& x)
                  { return Eigen::Vector3d(0.0, w * std::sin(around(x)), w * std::cos(around(x))); },
                  .director_change = [](const Eigen::Vector3d&) { return Eigen::Vector3d(0.0, 0.0, 0.0); }}) ==
          doctest::Approx(expected).epsilon(2.5e-4));
}

TEST_CASE("a thick cylinder whose sections fan out strains the same at every distance")
{
  // Each radius turns by a part of its own angle: u = alpha phi (R + z) along the arc, strain alpha everywhere, no
  // shear.
  const double alpha = 1e-3;
  const double expected = 0.5 * E / (1.0 - nu * nu) * alpha * alpha * thickness * length * angle * radius;
  for (const Grid grid : {Grid::even, Grid::distorted})
    CHECK(energy(cylinder(grid), {.displacement = [&](const Eigen::Vector3d& x)
                                  { return Eigen::Vector3d(alpha * around(x) * radius * tangent(x)); },
                                  .director_change = [&](const Eigen::Vector3d& x)
                                  { return Eigen::Vector3d(alpha * around(x) * tangent(x)); }}) ==
          doctest::Approx(expected).epsilon(1e-5));
}

TEST_CASE("a thick cylinder sheared along its axis twists less inside than outside")
{
  // A turn about the axis that grows along it, theta = beta x: u = beta x (R + z) along the arc; shear strain beta (R +
  // z) between axis and arc, no other: energy G/2 beta^2 of the integral of (R + z)^2 (1 + z/R) = R^2 t (1 + t^2/(4
  // R^2)).
  const double beta = 0.01; // [rad/m]
  const double G = E / (2.0 * (1.0 + nu));
  const double area = length * angle * radius;
  const double expected = 0.5 * G * beta * beta * radius * radius * thickness *
                          (1.0 + thickness * thickness / (4.0 * radius * radius)) * area;
  for (const Grid grid : {Grid::even, Grid::distorted})
    CHECK(energy(cylinder(grid), {.displacement = [&](const Eigen::Vector3d& x)
                                  { return Eigen::Vector3d(beta * x.x() * radius * tangent(x)); },
                                  .director_change = [&](const Eigen::Vector3d& x)
                                  { return Eigen::Vector3d(beta * x.x() * tangent(x)); }}) ==
          doctest::Approx(expected).epsilon(1e-5));
}

TEST_CASE("a cylinder sheared across its axis: in its surface at the crown, through its thickness at the sides")
{
  // u = gamma x along y, whatever the distance from the mid-surface: shear strain gamma cos(phi) in the surface, gamma
  // sin(phi) through the thickness (with 5/6), nothing else. The change of volume is odd in z and falls out.
  const double gamma = 1e-3;
  const double G = E / (2.0 * (1.0 + nu));
  const double in_surface = 0.5 * (angle + std::sin(angle)); // integrals of cos^2 and sin^2 over the angle
  const double through = 0.5 * (angle - std::sin(angle));
  const double expected = 0.5 * G * gamma * gamma * thickness * length * radius * (in_surface + 5.0 / 6.0 * through);
  for (const Grid grid : {Grid::even, Grid::distorted})
    CHECK(energy(cylinder(grid),
                 {.displacement = [&](const Eigen::Vector3d& x) { return Eigen::Vector3d(0.0, gamma * x.x(), 0.0); },
                  .director_change = [](const Eigen::Vector3d&) { return Eigen::Vector3d(0.0, 0.0, 0.0); }}) ==
          doctest::Approx(expected).epsilon(1e-5));
}
