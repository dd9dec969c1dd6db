// SPDX-License-Identifier: MPL-2.0
#include "relative.h"
#include "sample_models.h"

#include <plate/elements/cubic_triangle.h>
#include <plate/elements/shell_triangle.h>

#include <doctest/doctest.h>

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>
#include <Eigen/Geometry>

#include <cmath>
#include <numbers>
#include <random>
#include <vector>

using namespace plate;

namespace
{

using std::numbers::pi;

/// One triangle of a saddle-like surface with curved edges and varying thickness.
ShellTriangleNodes curved_element()
{
  ShellTriangleNodes nodes;
  const auto natural = CubicTriangle::node_coordinates();
  for (int i = 0; i < 10; ++i)
  {
    const double u = natural(i, 0);
    const double v = natural(i, 1);
    const double x = 0.02 * (u + 0.1 * v + 0.08 * u * v);
    const double y = 0.017 * (v - 0.2 * u + 0.05 * u * u);
    nodes.position.col(i) << x, y, 8.0 * x * x - 5.0 * y * y + 3.0 * x * y + 0.2 * x;
    nodes.normal.col(i) = Eigen::Vector3d(-16.0 * x - 3.0 * y - 0.2, 10.0 * y - 3.0 * x, 1.0).normalized();
    nodes.thickness(i) = 2.5e-3 + 1e-3 * u - 0.5e-3 * v;
    nodes.station(i) = x - 0.01;
  }
  return nodes;
}

ShellMaterial carved_hybrid()
{
  return {.laminate = {{{.material = test::reference_carbon(), .thickness = 0.2e-3, .angle = Angle::degrees(20)},
                        {.material = test::reference_spruce(),
                         .thickness = 2.0e-3,
                         .angle = Angle::degrees(10),
                         .grain = Grain::carved},
                        {.material = test::reference_carbon(), .thickness = 0.1e-3, .angle = Angle::degrees(-40)}}}};
}

Bar sample_bar()
{
  return {.material = test::reference_spruce(),
          .width = 6e-3,
          .profile = {{-0.01, 0.0, 0.01}, {4e-3, 9e-3, 5e-3}},
          .axis = Eigen::Vector3d(0.95, std::sqrt(1.0 - 0.95 * 0.95), 0.0)};
}

ShellTriangleNodes flat_element(double thickness)
{
  ShellTriangleNodes nodes;
  const auto natural = CubicTriangle::node_coordinates();
  for (int i = 0; i < 10; ++i)
  {
    nodes.position.col(i) << 0.03 * natural(i, 0) + 0.004 * natural(i, 1), 0.02 * natural(i, 1), 0.0;
    nodes.normal.col(i) = Eigen::Vector3d::UnitZ();
    nodes.thickness(i) = thickness;
  }
  return nodes;
}

/// Triangles that cover one eighth of a sphere: the flat triangle between the axes cut n by n and blown up.
std::vector<ShellTriangleNodes> sphere_octant(double radius, double thickness, int n)
{
  std::vector<ShellTriangleNodes> elements;
  const auto natural = CubicTriangle::node_coordinates();
  const auto add = [&](double a, double b, double size) // corner and signed size in the coordinates of the octant
  {
    ShellTriangleNodes nodes;
    for (int i = 0; i < 10; ++i)
    {
      const double u = a + size * natural(i, 0);
      const double v = b + size * natural(i, 1);
      nodes.normal.col(i) = Eigen::Vector3d(1.0 - u - v, u, v).normalized();
      nodes.position.col(i) = radius * nodes.normal.col(i);
      nodes.thickness(i) = thickness;
    }
    elements.push_back(nodes);
  };
  for (int i = 0; i < n; ++i)
    for (int j = 0; i + j < n; ++j)
    {
      add(static_cast<double>(i) / n, static_cast<double>(j) / n, 1.0 / n);
      if (i + j + 1 < n)
        add(static_cast<double>(i + 1) / n, static_cast<double>(j + 1) / n, -1.0 / n);
    }
  return elements;
}

/// Kinetic energy of the six rigid motions, twice: mass, moments and inertia.
Eigen::Matrix<double, 6, 6> rigid_inertia(const ShellTriangleNodes& nodes, const ShellMaterial& material,
                                          const TriangleParts& parts)
{
  ShellTriangle::Matrix M;
  ShellTriangle::mass(nodes, material, parts, M);
  const auto R = ShellTriangle::rigid_motions(nodes, material.axes);
  return R.transpose() * M * R;
}

} // namespace

TEST_CASE("element matrices are symmetric and the mass is positive definite")
{
  const Bar bar = sample_bar();
  const BarTorsion torsion = {.station = {0.0, 0.1}, .stiffness = {0.3, 0.5}};
  for (const Bar* glued : {static_cast<const Bar*>(nullptr), &bar})
  {
    ShellTriangle::Matrix K;
    ShellTriangle::Matrix M;
    ShellTriangle::stiffness(curved_element(), carved_hybrid(), {.bar = glued, .bar_torsion = &torsion}, K);
    ShellTriangle::mass(curved_element(), carved_hybrid(), {.bar = glued, .bar_torsion = &torsion}, M);
    CHECK((K - K.transpose()).cwiseAbs().maxCoeff() <= 1e-14 * K.cwiseAbs().maxCoeff());
    CHECK((M - M.transpose()).cwiseAbs().maxCoeff() <= 1e-14 * M.cwiseAbs().maxCoeff());
    CHECK(M.llt().info() == Eigen::Success);
  }
}

TEST_CASE("rigid motions of a distorted curved element carry no energy, with and without a bar")
{
  const Bar bar = sample_bar();
  const BarTorsion torsion = {.station = {0.0, 0.1}, .stiffness = {0.3, 0.5}};
  for (const Bar* glued : {static_cast<const Bar*>(nullptr), &bar})
  {
    ShellTriangle::Matrix K;
    ShellTriangle::stiffness(curved_element(), carved_hybrid(), {.bar = glued, .bar_torsion = &torsion}, K);
    const auto R = ShellTriangle::rigid_motions(curved_element(), {});
    for (int k = 0; k < 6; ++k)
    {
      const Eigen::Matrix<double, 50, 1> r = R.col(k);
      // Against the energy that the same nodal values carry when their signs alternate.
      Eigen::Matrix<double, 50, 1> bent = r;
      for (int i = 0; i < 50; i += 2)
        bent(i) = -bent(i);
      CHECK(std::abs(r.dot(K * r)) < 1e-12 * bent.dot(K * bent));
    }
  }
}

TEST_CASE("an element has no motion without energy but the six rigid ones")
{
  // Full integration: no spurious mechanisms. 50 unknowns, 6 zero eigenvalues.
  ShellTriangle::Matrix K;
  ShellTriangle::stiffness(curved_element(), carved_hybrid(), {}, K);
  Eigen::Matrix<double, 50, 1> scale; // rotations to displacements of like size
  for (int i = 0; i < 50; ++i)
    scale(i) = i % 5 < 3 ? 1.0 : 1.0 / 0.02;
  const ShellTriangle::Matrix scaled = scale.asDiagonal() * K * scale.asDiagonal();
  const Eigen::SelfAdjointEigenSolver<ShellTriangle::Matrix> eigen(scaled, Eigen::EigenvaluesOnly);
  CHECK(std::abs(eigen.eigenvalues()(5)) < 1e-12 * eigen.eigenvalues()(49));
  CHECK(eigen.eigenvalues()(6) > 1e-7 * eigen.eigenvalues()(49));
}

TEST_CASE("energies of fields are those of the stiffness matrix")
{
  const Bar bar = sample_bar();
  const BarTorsion torsion = {.station = {0.0, 0.1}, .stiffness = {0.3, 0.5}};
  ShellTriangle::Matrix K;
  ShellTriangle::stiffness(curved_element(), carved_hybrid(), {.bar = &bar, .bar_torsion = &torsion}, K);
  std::mt19937 random(3);
  std::uniform_real_distribution<double> uniform(-1.0, 1.0);
  ShellTriangle::Displacements u(50, 3);
  for (double& value : u.reshaped())
    value = uniform(random);
  Eigen::VectorXd energies = Eigen::VectorXd::Ones(3);
  ShellTriangle::add_strain_energies(curved_element(), carved_hybrid(), {.bar = &bar, .bar_torsion = &torsion}, u,
                                     energies);
  for (int i = 0; i < 3; ++i)
    CHECK(energies(i) - 1.0 == doctest::Approx(0.5 * u.col(i).dot(K * u.col(i))).epsilon(1e-12));
}

TEST_CASE("a flat element has the mass and the inertia of a flat plate")
{
  const double t = 4e-3;
  const double rho = 400.0;
  const double area = 0.5 * 0.03 * 0.02;
  const auto I = rigid_inertia(flat_element(t), {.laminate = test::solid(test::reference_spruce(), t)}, {});
  for (int k = 0; k < 3; ++k)
    CHECK(I(k, k) == doctest::Approx(rho * t * area).epsilon(1e-12));
  // Triangle with one corner at the origin: integral of y^2 is b h^3/12; the thickness adds t^2/12 per area.
  const double y2 = 0.03 * std::pow(0.02, 3) / 12.0;
  CHECK(I(3, 3) == test::relative(rho * t * (y2 + area * t * t / 12.0), 1e-12));
  CHECK(I(1, 3) == doctest::Approx(0.0));                                        // the mid-surface lies in z = 0
  CHECK(I(2, 3) == doctest::Approx(rho * t * area * 0.02 / 3.0).epsilon(1e-12)); // w = y on a turn about x
}

TEST_CASE("an unsymmetric laminate has its centre of gravity off the mid-surface")
{
  // Carbon below, balsa above: moment = sum rho t z.
  const Laminate laminate = {{{.material = test::reference_carbon(), .thickness = 1e-3},
                              {.material = test::reference_balsa(), .thickness = 3e-3}}};
  const auto I = rigid_inertia(flat_element(4e-3), {.laminate = laminate}, {});
  const double area = 0.5 * 0.03 * 0.02;
  const double moment = area * (1580.0 * 1e-3 * -1.5e-3 + 100.0 * 3e-3 * 0.5e-3);
  CHECK(I(0, 4) == doctest::Approx(moment).epsilon(1e-12)); // a turn about y moves a point at height z by z along x
  CHECK(I(1, 3) == doctest::Approx(-moment).epsilon(1e-12));
}

TEST_CASE("thickness varies within an element: centre of gravity and bending stiffness of a wedge")
{
  // t = t0 + t1 u, u and v the natural coordinates of a triangle with area A: the integrals of u, u^2, u v and u^3 are
  // A/3, A/6, A/12 and A/10.
  const double t0 = 2e-3;
  const double t1 = 3e-3;
  const double area = 0.5 * 0.03 * 0.02;
  ShellTriangleNodes wedge = flat_element(t0);
  wedge.thickness += t1 * CubicTriangle::node_coordinates().col(0).transpose();
  const ShellMaterial material = {.laminate = test::solid(test::isotropic(8e9, 0.0, 400.0), t0)};
  const auto I = rigid_inertia(wedge, material, {});
  CHECK(I(0, 0) / (400.0 * area * (t0 + t1 / 3.0)) == doctest::Approx(1.0).epsilon(1e-12));
  const double moment_x =
      400.0 * area * (t0 * (0.03 + 0.004) / 3.0 + t1 * (0.03 / 6.0 + 0.004 / 12.0)); // x = 0.03 u + 0.004 v
  CHECK(I(1, 5) / moment_x == doctest::Approx(1.0).epsilon(1e-12)); // a turn about z moves a point by x along y

  // Bent by kappa along x, w = -kappa x^2/2, the director follows: kappa^2/2 times the integral of E t^3/12.
  const double kappa = 0.2; // [1/m]
  Eigen::Matrix<double, 50, 1> u = Eigen::Matrix<double, 50, 1>::Zero();
  for (int i = 0; i < 10; ++i)
  {
    const double x = wedge.position(0, i);
    u(5 * i + 2) = -0.5 * kappa * x * x;
    u(5 * i + 4) = kappa * x;
  }
  ShellTriangle::Matrix K;
  ShellTriangle::stiffness(wedge, material, {}, K);
  const double cubes = area * (std::pow(t0, 3) + t0 * t0 * t1 + t0 * t1 * t1 / 2.0 + std::pow(t1, 3) / 10.0);
  CHECK(0.5 * u.dot(K * u) / (0.5 * kappa * kappa * 8e9 / 12.0 * cubes) == doctest::Approx(1.0).epsilon(1e-10));
}

TEST_CASE("a thick sphere has the volume and the inertia of a hollow ball")
{
  // Exact: 4 pi/3 (Ro^3 - Ri^3) and 8 pi/15 rho (Ro^5 - Ri^5) about a diameter; the metric through the thickness counts
  // 0.75 % and 2.5 % of them here. What is left is the interpolation of the sphere by 81
  // cubic triangles to the octant, 1e-5.
  const double R = 0.2, t = 0.06, rho = 400.0;
  const ShellMaterial material = {.laminate = test::solid(test::reference_spruce(), t)};
  Eigen::Matrix<double, 6, 6> I = Eigen::Matrix<double, 6, 6>::Zero();
  for (const ShellTriangleNodes& nodes : sphere_octant(R, t, 9))
    I += rigid_inertia(nodes, material, {});
  const double outer = R + 0.5 * t;
  const double inner = R - 0.5 * t;
  const double mass = rho * 4.0 * pi / 3.0 * (std::pow(outer, 3) - std::pow(inner, 3)) / 8.0;
  const double inertia = rho * 8.0 * pi / 15.0 * (std::pow(outer, 5) - std::pow(inner, 5)) / 8.0;
  for (int k = 0; k < 3; ++k)
  {
    CHECK(I(k, k) == doctest::Approx(mass).epsilon(2e-5));
    CHECK(I(3 + k, 3 + k) == test::relative(inertia, 2e-5));
  }
}

TEST_CASE("turning and shifting the whole element changes nothing")
{
  const Eigen::Matrix3d R = (Eigen::AngleAxisd(0.7, Eigen::Vector3d(1, 2, -1).normalized()) *
                             Eigen::AngleAxisd(-1.9, Eigen::Vector3d(0.3, -1, 2).normalized()))
                                .toRotationMatrix();
  const ShellMaterial material = carved_hybrid();
  ShellMaterial turned_material = material;
  turned_material.axes = {.axis = R * material.axes.axis, .up = R * material.axes.up};
  const Bar bar = sample_bar();
  const BarTorsion torsion = {.station = {0.0, 0.1}, .stiffness = {0.3, 0.5}};
  Bar turned_bar = bar;
  turned_bar.axis = R * bar.axis;
  const ShellTriangleNodes nodes = curved_element();
  ShellTriangleNodes turned = nodes;
  turned.position = (R * nodes.position).colwise() + Eigen::Vector3d(0.3, -0.2, 0.5);
  turned.normal = R * nodes.normal;

  ShellTriangle::Matrix turn = ShellTriangle::Matrix::Identity(); // rotation unknowns turn with their frames
  for (int i = 0; i < 10; ++i)
    turn.block<3, 3>(5 * i, 5 * i) = R;
  ShellTriangle::Matrix K, M, K_turned, M_turned;
  ShellTriangle::stiffness(nodes, material, {.bar = &bar, .bar_torsion = &torsion}, K);
  ShellTriangle::stiffness(turned, turned_material, {.bar = &turned_bar, .bar_torsion = &torsion}, K_turned);
  ShellTriangle::mass(nodes, material, {.bar = &bar, .bar_torsion = &torsion}, M);
  ShellTriangle::mass(turned, turned_material, {.bar = &turned_bar, .bar_torsion = &torsion}, M_turned);
  CHECK((turn.transpose() * K_turned * turn - K).cwiseAbs().maxCoeff() < 1e-10 * K.cwiseAbs().maxCoeff());
  CHECK((turn.transpose() * M_turned * turn - M).cwiseAbs().maxCoeff() < 1e-10 * M.cwiseAbs().maxCoeff());
}
