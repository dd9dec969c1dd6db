// SPDX-License-Identifier: MPL-2.0
#include "relative.h"
#include "sample_models.h"

#include <plate/assembly/body.h>
#include <plate/core/error.h>
#include <plate/core/threads.h>

#include <doctest/doctest.h>

#include <Eigen/Eigenvalues>
#include <Eigen/SparseCholesky>

#include <cmath>
#include <numbers>
#include <vector>

using namespace plate;

namespace
{

constexpr double E = 10e9; // [Pa]
constexpr double thickness = 3e-3;
using std::numbers::pi;

/// A flat wall over x from 0 to `length` and y from 0 to `width`.
Model wall(double length, double width, double nu, int cells = 1)
{
  return test::plate_model(test::grid_mesh({.x = test::even_lines(0.0, length, cells),
                                            .y = test::even_lines(0.0, width, cells),
                                            .surface = test::flat(),
                                            .thickness = thickness}),
                           test::solid(test::isotropic(E, nu, 500.0), thickness));
}

Eigen::Isometry3d turned(double angle, const Eigen::Vector3d& axis, const Eigen::Vector3d& origin)
{
  Eigen::Isometry3d placement = Eigen::Isometry3d::Identity();
  placement.linear() = Eigen::AngleAxisd(angle, axis).toRotationMatrix();
  placement.translation() = origin;
  return placement;
}

Body glued(std::vector<BodyPart> parts)
{
  Body body = {.parts = std::move(parts), .joints = {}};
  body.joints = nodes_at_one_place(body.parts);
  return body;
}

/// A closed box with sides of 0.3, 0.2 and 0.1 m.
Body box(int cells)
{
  using Eigen::Vector3d;
  const double up = 0.5 * pi;
  return glued(
      {{.name = "bottom", .model = wall(0.3, 0.2, 0.3, cells)},
       {.name = "top", .model = wall(0.3, 0.2, 0.3, cells), .placement = turned(0, Vector3d::UnitX(), {0, 0, 0.1})},
       {.name = "y-", .model = wall(0.3, 0.1, 0.3, cells), .placement = turned(up, Vector3d::UnitX(), {0, 0, 0})},
       {.name = "y+", .model = wall(0.3, 0.1, 0.3, cells), .placement = turned(up, Vector3d::UnitX(), {0, 0.2, 0})},
       {.name = "x-", .model = wall(0.1, 0.2, 0.3, cells), .placement = turned(-up, Vector3d::UnitY(), {0, 0, 0})},
       {.name = "x+", .model = wall(0.1, 0.2, 0.3, cells), .placement = turned(-up, Vector3d::UnitY(), {0.3, 0, 0})}});
}

Eigen::MatrixXd dense(const SparseMatrix& lower)
{
  return Eigen::MatrixXd(lower).selfadjointView<Eigen::Lower>();
}

Eigen::VectorXd values(const SparseMatrix& m)
{
  return Eigen::Map<const Eigen::VectorXd>(m.valuePtr(), m.nonZeros());
}

/// Deflection of the end of an L, one wall clamped, the other standing at `fold` to its continuation, under a force P
/// square to the second wall. Beam theory with shear, which walls without Poisson's ratio follow exactly.
double end_deflection(double a, double c, double width, double fold, double P)
{
  const double EI = E * std::pow(thickness, 3) / 12.0 * width;
  const double GA = 5.0 / 6.0 * 0.5 * E * thickness * width;
  const double EA = E * thickness * width;
  const double cosine = std::cos(fold);
  const double bending = std::pow(c, 3) / 3.0 + a * c * c + a * a * c * cosine + std::pow(a, 3) * cosine * cosine / 3.0;
  return P * (bending / EI + a * std::pow(std::sin(fold), 2) / EA + (c + a * cosine * cosine) / GA);
}

/// Two walls 0.4 m apart with a post between the middles of both.
Body walls_with_post()
{
  const PlanformRegion foot = EllipseRegion{.centre = {0.11, 0.09}, .axes = {0.02, 0.02}};
  Body body = {.parts = {{.name = "lower", .model = wall(0.2, 0.2, 0.3, 2)},
                         {.name = "upper",
                          .model = wall(0.2, 0.2, 0.3, 2),
                          .placement = turned(0.0, Eigen::Vector3d::UnitX(), {0.0, 0.0, 0.4})}},
               .joints = {}};
  body.struts = {{.feet = {StrutFoot{.part = 0, .region = foot}, StrutFoot{.part = 1, .region = foot}},
                  .E = 12e9,
                  .G = 0.7e9,
                  .density = 400.0,
                  .diameter = 0.02}};
  return body;
}

/// Displacements of the upper wall that turn it about axes through the foot of the post, then shift it; the lower
/// rests.
Eigen::VectorXd move_upper(const BodySystem& s, const Body& body, const Eigen::Vector3d& shift,
                           const Eigen::Vector3d& turn)
{
  const Eigen::Vector3d middle(0.11, 0.09, 0.4);
  Eigen::Matrix<double, 6, 1> motion;
  motion << shift - turn.cross(middle), turn;
  const Eigen::VectorXd all = s.system.rigid_motions * motion;
  const auto lower = static_cast<Eigen::Index>(5 * body.parts[0].model.mesh.nodes.size());
  Eigen::VectorXd x = all;
  x.head(lower).setZero();
  return x;
}

double energy(const SparseMatrix& K, const Eigen::VectorXd& x)
{
  return 0.5 * x.dot(K.selfadjointView<Eigen::Lower>() * x);
}

} // namespace

TEST_CASE("a free closed box has six rigid motions and no other that costs nothing")
{
  const BodySystem s = assemble(box(1));
  REQUIRE(s.system.rigid_motions.cols() == 6);
  const Eigen::MatrixXd K = dense(s.system.K);
  const Eigen::MatrixXd residual = K * s.system.rigid_motions;
  CHECK(residual.cwiseAbs().maxCoeff() < 1e-9 * K.diagonal().maxCoeff());
  const Eigen::GeneralizedSelfAdjointEigenSolver<Eigen::MatrixXd> modes(K, dense(s.system.M), Eigen::EigenvaluesOnly);
  const Eigen::VectorXd& lambda = modes.eigenvalues();
  CHECK(std::abs(lambda(5)) < 1e-7 * lambda(6));
  CHECK(lambda(6) > 0.0);
}

TEST_CASE("a box weighs what its walls weigh, about its middle")
{
  const BodySystem s = assemble(box(1));
  const double walls = 2.0 * (0.3 * 0.2 + 0.3 * 0.1 + 0.2 * 0.1);
  CHECK(s.system.mass == test::relative(500.0 * thickness * walls, 1e-12));
  CHECK((s.system.centre_of_gravity - Eigen::Vector3d(0.15, 0.1, 0.05)).norm() < 1e-12);
  const Eigen::MatrixXd shift = s.system.rigid_motions.leftCols<3>();
  const Eigen::Matrix3d inertia = shift.transpose() * (s.system.M.selfadjointView<Eigen::Lower>() * shift);
  CHECK((inertia - s.system.mass * Eigen::Matrix3d::Identity()).norm() < 1e-10 * s.system.mass);
}

TEST_CASE("an L bends at any angle of its fold as beam theory says")
{
  constexpr double a = 0.2, c = 0.15, width = 0.05, P = 3.0;
  for (const double degrees : {90.0, 30.0, 0.01, 0.0, -60.0, 150.0})
  {
    CAPTURE(degrees);
    const double fold = degrees * pi / 180.0;
    Model first = wall(a, width, 0.0, 2);
    first.supports = {{.group = "x-", .support = EdgeSupport::clamped}};
    const Eigen::Isometry3d placement = turned(-fold, Eigen::Vector3d::UnitY(), {a, 0.0, 0.0});
    const Body body = glued({{.name = "first", .model = first},
                             {.name = "second", .model = wall(c, width, 0.0, 2), .placement = placement}});
    const BodySystem s = assemble(body);
    CHECK(s.system.rigid_motions.cols() == 0);
    // The force on the end, shared as the work of a unit displacement of its nodes: 1 3 3 1 eighths of each edge.
    const PartSystem& second = s.parts[1];
    Eigen::VectorXd own = Eigen::VectorXd::Zero(second.dofs.num_equations);
    for (const EdgeGroup& group : body.parts[1].model.mesh.boundary)
      if (group.name == "x+")
        for (const auto& edge : group.edges)
          for (std::size_t k = 0; k < 4; ++k)
            own(second.dofs.equation[static_cast<std::size_t>(edge[k])][2]) +=
                P / static_cast<double>(group.edges.size()) * (k == 0 || k == 3 ? 0.125 : 0.375);
    const Eigen::VectorXd f = second.from_body.transpose() * own;
    const Eigen::SimplicialLDLT<SparseMatrix> factor(s.system.K);
    const Eigen::VectorXd x = factor.solve(f);
    CHECK(f.dot(x) / P == test::relative(end_deflection(a, c, width, fold, P), 1e-6));
  }
}

TEST_CASE("directors that differ a little at a joint neither lock nor soften a curved strip")
{
  // A quarter of a ring, clamped at one end, pulled radially at the other: M = P R cos(a), N = P cos(a), V = P sin(a);
  // what the curvature adds is (t / R)^2 / 6 of it. The halves are glued; the second has its first directors turned.
  constexpr double radius = 0.3, width = 0.05, P = 3.0;
  const double arc = 0.5 * pi * radius;
  const test::Surface ring = {
      .position = [=](double s, double y)
      { return Eigen::Vector3d(radius * std::sin(s / radius), y, radius * std::cos(s / radius)); },
      .normal = [=](double s, double) { return Eigen::Vector3d(std::sin(s / radius), 0.0, std::cos(s / radius)); }};
  const auto half = [&](double from)
  {
    return test::plate_model(test::grid_mesh({.x = test::even_lines(from, from + 0.5 * arc, 6),
                                              .y = test::even_lines(0.0, width, 1),
                                              .surface = ring,
                                              .thickness = thickness}),
                             test::solid(test::isotropic(E, 0.0, 500.0), thickness));
  };
  const double EI = E * std::pow(thickness, 3) / 12.0 * width;
  const double area = thickness * width;
  const double exact =
      0.25 * pi * P * radius * (radius * radius / EI + 1.0 / (E * area) + 1.0 / (5.0 / 6.0 * 0.5 * E * area));
  for (const double degrees : {0.0, 0.01, 0.3})
  {
    CAPTURE(degrees);
    Model first = half(0.0);
    first.supports = {{.group = "x-", .support = EdgeSupport::clamped}};
    Model second = half(0.5 * arc);
    const Eigen::AngleAxisd turn(degrees * pi / 180.0, Eigen::Vector3d::UnitY());
    for (const EdgeGroup& group : second.mesh.boundary)
      if (group.name == "x-")
        for (const auto& edge : group.edges)
          for (const int node : edge)
          {
            Eigen::Vector3d& normal = second.mesh.normals[static_cast<std::size_t>(node)];
            normal = ring.normal(0.5 * arc, 0.0);
            normal = turn * normal;
          }
    const Body body = glued({{.name = "first", .model = first}, {.name = "second", .model = second}});
    const BodySystem s = assemble(body);
    const PartSystem& end = s.parts[1];
    Eigen::VectorXd own = Eigen::VectorXd::Zero(end.dofs.num_equations);
    for (const EdgeGroup& group : body.parts[1].model.mesh.boundary)
      if (group.name == "x+")
        for (std::size_t k = 0; k < 4; ++k)
          own(end.dofs.equation[static_cast<std::size_t>(group.edges.front()[k])][0]) +=
              P * (k == 0 || k == 3 ? 0.125 : 0.375);
    const Eigen::VectorXd f = end.from_body.transpose() * own;
    const Eigen::SimplicialLDLT<SparseMatrix> factor(s.system.K);
    CHECK(f.dot(factor.solve(f)) / P == test::relative(exact, degrees > 0.1 ? 1e-3 : 1e-4));
  }
}

TEST_CASE("two rotations serve where walls lie in one plane, three elsewhere")
{
  const Model piece = wall(0.2, 0.1, 0.3);
  const auto at = [&](double fold)
  {
    return assemble(glued({{.name = "a", .model = piece},
                           {.name = "b",
                            .model = piece,
                            .placement = turned(-fold, Eigen::Vector3d::UnitY(), {0.2, 0.0, 0.0})}}))
        .system.dofs.num_equations;
  };
  const int places = 2 * 16 - 4;
  CHECK(at(0.0) == 5 * places);
  CHECK(at(0.5) == 5 * places + 4);
}

TEST_CASE("a plate cut in two and glued with one half upside down bends as the whole")
{
  // The field u of the whole costs what its two halves cost in their own axes.
  const Model half = wall(0.2, 0.1, 0.3, 2);
  Eigen::Isometry3d over = turned(pi, Eigen::Vector3d::UnitX(), {0.2, 0.1, 0.0});
  const BodySystem s = assemble(glued({{.name = "a", .model = half}, {.name = "b", .model = half, .placement = over}}));
  CHECK(s.system.dofs.num_equations == 5 * (2 * 49 - 7));
  CHECK(s.system.rigid_motions.cols() == 6);
  const Eigen::MatrixXd K = dense(s.system.K);
  CHECK((K * s.system.rigid_motions).cwiseAbs().maxCoeff() < 1e-9 * K.diagonal().maxCoeff());
  // Cylindrical bending w = x^2 / 2 with its rotation -x about y: energy D length width / 2, Poisson's ratio included.
  Eigen::VectorXd own = Eigen::VectorXd::Zero(s.system.dofs.num_equations);
  const double D = E * std::pow(thickness, 3) / (12.0 * (1.0 - 0.09));
  for (std::size_t p = 0; p < 2; ++p)
    for (std::size_t i = 0; i < half.mesh.nodes.size(); ++i)
    {
      const double x = half.mesh.nodes[i].x() + (p == 0 ? 0.0 : 0.2);
      const Eigen::Vector3d w(0.0, 0.0, 0.5 * x * x);
      const Eigen::Vector3d turn(0.0, -x, 0.0);
      const PartSystem& part = s.parts[p];
      Eigen::VectorXd unit = Eigen::VectorXd::Zero(part.dofs.num_equations);
      // from_body maps places to nodes one to one here: its transpose carries values back.
      const double sign = p == 0 ? 1.0 : -1.0;
      unit(part.dofs.equation[i][2]) = sign * w.z();
      unit(part.dofs.equation[i][4]) = sign * turn.y();
      const Eigen::VectorXd back = part.from_body.transpose() * unit;
      for (Eigen::Index k = 0; k < back.size(); ++k)
        if (back(k) != 0.0)
          own(k) = back(k);
    }
  CHECK(energy(s.system.K, own) == test::relative(0.5 * D * 0.4 * 0.1, 1e-9));
}

TEST_CASE("a post stretches, bends and twists as a round rod between its feet")
{
  const Body body = walls_with_post();
  const BodySystem s = assemble(body);
  const double area = pi * 1e-4;
  const double I = area * 0.02 * 0.02 / 16.0;
  const double L = 0.4;
  CHECK(energy(s.system.K, move_upper(s, body, {0, 0, 1e-3}, {0, 0, 0})) ==
        test::relative(0.5 * 12e9 * area / L * 1e-6, 1e-9));
  CHECK(energy(s.system.K, move_upper(s, body, {0, 0, 0}, {0, 0, 1e-2})) ==
        test::relative(0.5 * 0.7e9 * 2.0 * I / L * 1e-4, 1e-9));
  // Clamped at one end, shifted across without a turn at the other: 12 EI / (L^3 (1 + phi)).
  const double phi = 12.0 * 12e9 * I / (0.9 * 0.7e9 * area * L * L);
  CHECK(energy(s.system.K, move_upper(s, body, {1e-3, 0, 0}, {0, 0, 0})) ==
        test::relative(0.5 * 12.0 * 12e9 * I / (L * L * L * (1.0 + phi)) * 1e-6, 1e-9));
  // An arc of constant curvature needs no shear: both ends turned by t in opposite senses, u = L t / 2 between them.
  const double t = 1e-2;
  CHECK(energy(s.system.K, move_upper(s, body, {0.5 * L * t, 0, 0}, {0, t, 0})) ==
        test::relative(0.5 * 12e9 * I / L * t * t, 1e-9));
  CHECK(s.system.mass == test::relative(2.0 * 500.0 * thickness * 0.04 + 400.0 * area * L, 1e-9));
  CHECK((dense(s.system.K) * s.system.rigid_motions).cwiseAbs().maxCoeff() <
        1e-9 * dense(s.system.K).diagonal().maxCoeff());
}

TEST_CASE("a rigid body on a wall moves with it, about its own centre")
{
  Body body = box(1);
  const System bare = assemble(body).system;
  const Eigen::Vector3d centre(0.5, 0.1, 0.07);
  const Eigen::Matrix3d inertia = Eigen::Vector3d(1e-4, 2e-4, 3e-4).asDiagonal();
  body.masses = {{.part = 5, .nodes = {0, 1, 2, 3}, .mass = 0.2, .centre = centre, .inertia = inertia}};
  const System with = assemble(body).system;
  CHECK(with.mass - bare.mass == doctest::Approx(0.2));
  CHECK((with.centre_of_gravity * with.mass - bare.centre_of_gravity * bare.mass - 0.2 * centre).norm() < 1e-12);
  // Inertia of the six rigid motions: m, m c x, and about the origin J + m (c.c - c cT).
  const auto inertia_of = [](const System& s) -> Eigen::MatrixXd
  { return s.rigid_motions.transpose() * (s.M.selfadjointView<Eigen::Lower>() * s.rigid_motions); };
  const Eigen::MatrixXd added = inertia_of(with) - inertia_of(bare);
  const Eigen::Matrix3d about_origin =
      inertia + 0.2 * (centre.squaredNorm() * Eigen::Matrix3d::Identity() - centre * centre.transpose());
  CHECK((added.topLeftCorner<3, 3>() - 0.2 * Eigen::Matrix3d::Identity()).norm() < 1e-12);
  CHECK((added.bottomRightCorner<3, 3>() - about_origin).norm() < 1e-12);
  for (int k = 0; k < 3; ++k)
    CHECK((added.block<3, 1>(0, 3 + k) - 0.2 * Eigen::Vector3d::Unit(k).cross(centre)).norm() < 1e-12);
  body.masses.front().nodes = {0, 1};
  CHECK_THROWS_WITH_AS(static_cast<void>(assemble(body)), doctest::Contains("three nodes"), InvalidInput);
}

TEST_CASE("a body gives the same bits on one thread and on four")
{
  const int before = num_threads();
  set_num_threads(1);
  const BodySystem one = assemble(box(3));
  set_num_threads(4);
  const BodySystem four = assemble(box(3));
  set_num_threads(before);
  CHECK(values(one.system.K) == values(four.system.K));
  CHECK(values(one.system.M) == values(four.system.M));
}

TEST_CASE("joints that cannot be are refused")
{
  Body body = box(1);
  body.joints.push_back({{.part = 0, .node = 0}, {.part = 1, .node = 0}});
  CHECK_THROWS_WITH_AS(static_cast<void>(assemble(body)), doctest::Contains("is in two joints"), InvalidInput);
  body.joints = {{{.part = 0, .node = 0}, {.part = 1, .node = 0}}};
  CHECK_THROWS_WITH_AS(static_cast<void>(assemble(body)), doctest::Contains("100 mm apart"), InvalidInput);
  body.joints = {{{.part = 0, .node = 0}}};
  CHECK_THROWS_WITH_AS(static_cast<void>(assemble(body)), doctest::Contains("two nodes or more"), InvalidInput);
  body.joints = {{{.part = 9, .node = 0}, {.part = 0, .node = 0}}};
  CHECK_THROWS_WITH_AS(static_cast<void>(assemble(body)), doctest::Contains("names part 9"), InvalidInput);
  body.joints = {{{.part = 0, .node = 999}, {.part = 1, .node = 0}}};
  CHECK_THROWS_WITH_AS(static_cast<void>(assemble(body)), doctest::Contains("names node 999"), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(assemble(Body{})), InvalidInput);
}
