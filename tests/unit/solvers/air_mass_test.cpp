// SPDX-License-Identifier: MPL-2.0
#include "sample_models.h"

#include <plate/core/error.h>
#include <plate/solvers/air_mass.h>

#include <doctest/doctest.h>

#include <cmath>
#include <functional>
#include <numbers>

using namespace plate;

namespace
{

constexpr double radius = 0.13;   // [m]
constexpr double density = 1.204; // [kg/m3]

/// The square -1...1 mapped on the unit disc, x^2 + y^2 = 1 all round.
Eigen::Vector2d on_disc(double x, double y)
{
  return {x * std::sqrt(1.0 - 0.5 * y * y), y * std::sqrt(1.0 - 0.5 * x * x)};
}

ShellMesh square_mesh(const test::Surface& surface)
{
  const std::vector<double> lines = test::lines_with_strips(1.0, 12, 0.03);
  return test::grid_mesh({.x = lines, .y = lines, .surface = surface, .thickness = 1e-3});
}

ShellMesh disc()
{
  return square_mesh({.position =
                          [](double x, double y)
                      {
                        const Eigen::Vector2d p = radius * on_disc(x, y);
                        return Eigen::Vector3d(p.x(), p.y(), 0.0);
                      },
                      .normal = [](double, double) { return Eigen::Vector3d::UnitZ().eval(); }});
}

/// A sphere with a hole of 6 deg round its lowest point.
ShellMesh open_sphere()
{
  const auto normal = [](double x, double y)
  {
    const Eigen::Vector2d p = on_disc(x, y);
    const double angle = p.norm() * (std::numbers::pi - 0.1);
    const double along = p.norm() > 0.0 ? std::sin(angle) / p.norm() : 0.0;
    return Eigen::Vector3d(along * p.x(), along * p.y(), std::cos(angle));
  };
  return square_mesh(
      {.position = [=](double x, double y) -> Eigen::Vector3d { return radius * normal(x, y); }, .normal = normal});
}

Eigen::VectorXd field(const ShellMesh& mesh, const std::function<double(const Eigen::Vector3d&)>& function)
{
  Eigen::VectorXd w(static_cast<Eigen::Index>(mesh.nodes.size()));
  for (std::size_t i = 0; i < mesh.nodes.size(); ++i)
    w(static_cast<Eigen::Index>(i)) = function(mesh.nodes[i] / radius);
  return w;
}

} // namespace

TEST_CASE("air moved by a disc without a baffle")
{
  // [Lamb1932] art. 108: 2 T = 8/3 rho a^3 U^2 for a disc moving broadside, 16/45 rho a^5 omega^2 turning about a
  // diameter. The panels leave less than 1 %.
  const ShellMesh mesh = disc();
  Eigen::MatrixXd w(static_cast<Eigen::Index>(mesh.nodes.size()), 3);
  w << field(mesh, [](const Eigen::Vector3d&) { return 1.0; }),
      field(mesh, [](const Eigen::Vector3d& x) { return x.x(); }),
      field(mesh, [](const Eigen::Vector3d& x) { return x.y(); });
  const Eigen::Matrix3d M = air_mass(mesh, w, density);
  const double cube = density * std::pow(radius, 3);
  CHECK(std::abs(M(0, 0) / (8.0 / 3.0 * cube) - 1.0) < 0.01);
  CHECK(std::abs(M(1, 1) / (16.0 / 45.0 * cube) - 1.0) < 0.01);
  CHECK(std::abs(M(2, 2) / (16.0 / 45.0 * cube) - 1.0) < 0.01);
  CHECK(std::abs(M(0, 1)) < 1e-2 * M(1, 1));
  CHECK(std::abs(M(1, 2)) < 1e-2 * M(1, 1));
  CHECK((M - M.transpose()).norm() == 0.0);
}

TEST_CASE("air inside and outside a sphere")
{
  // Surface harmonics of degree n on a sphere of radius a: potential a/n inside, a/(n + 1) outside, so the mass is
  // rho a (1/n + 1/(n + 1)) times the integral of the square ([Lamb1932] art. 91 and 92, potentials r^n and r^-n-1).
  // The hole lies where x and x y have no pressure.
  const ShellMesh mesh = open_sphere();
  Eigen::MatrixXd w(static_cast<Eigen::Index>(mesh.nodes.size()), 2);
  w << field(mesh, [](const Eigen::Vector3d& x) { return x.x(); }),
      field(mesh, [](const Eigen::Vector3d& x) { return x.x() * x.y(); });
  const Eigen::Matrix2d M = air_mass(mesh, w, density);
  const double cube = density * std::pow(radius, 3);
  CHECK(std::abs(M(0, 0) / (1.5 * 4.0 * std::numbers::pi / 3.0 * cube) - 1.0) < 0.02);
  CHECK(std::abs(M(1, 1) / (5.0 / 6.0 * 4.0 * std::numbers::pi / 15.0 * cube) - 1.0) < 0.03);
}

TEST_CASE("air needs motion at every node and a density")
{
  const ShellMesh mesh = disc();
  CHECK_THROWS_AS(static_cast<void>(air_mass(mesh, Eigen::MatrixXd::Zero(3, 1), density)), InvalidInput);
  const Eigen::MatrixXd w = Eigen::MatrixXd::Ones(static_cast<Eigen::Index>(mesh.nodes.size()), 1);
  CHECK_THROWS_AS(static_cast<void>(air_mass(mesh, w, -1.0)), InvalidInput);
}
