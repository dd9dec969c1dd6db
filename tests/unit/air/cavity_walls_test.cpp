// SPDX-License-Identifier: MPL-2.0
#include "relative.h"
#include "sample_cavities.h"

#include <plate/air/cavity_walls.h>
#include <plate/core/error.h>

#include <doctest/doctest.h>

#include <cmath>

using namespace plate;

namespace
{

constexpr double length = 0.3;
constexpr double width = 0.2;
constexpr double height = 0.04;

CavityMesh low_box()
{
  return test::cavity_over(test::rectangle(length, width, 6, 4, 1e-3), [](double, double) { return height; });
}

/// Arched plate over more than the planform of the box.
ShellMesh arched_top(double z)
{
  return test::lifted(test::grid_mesh({.x = {-0.16, -0.1, -0.03, 0.04, 0.1, 0.16},
                                       .y = {-0.11, -0.05, 0.0, 0.06, 0.11},
                                       .surface = test::biparabolic(0.32, 0.22, 0.015),
                                       .thickness = 3e-3}),
                      z);
}

/// Upright wall from (x0, y0) to (x1, y1), z from 0 to the height; its normal points to the right of the way.
ShellMesh upright(const Eigen::Vector2d& from, const Eigen::Vector2d& to)
{
  const Eigen::Vector2d along = (to - from).normalized();
  const double reach = (to - from).norm();
  const test::Surface wall = {.position = [=](double s, double z)
                              { return Eigen::Vector3d(from.x() + along.x() * s, from.y() + along.y() * s, z); },
                              .normal = [=](double, double) { return Eigen::Vector3d(along.y(), -along.x(), 0.0); }};
  return test::grid_mesh({.x = {0.0, 0.5 * reach, reach}, .y = {0.0, height}, .surface = wall, .thickness = 1e-3});
}

/// The same displacement at all nodes, one column.
Eigen::MatrixXd moved(const ShellMesh& mesh, const Eigen::Vector3d& by)
{
  return by.replicate(static_cast<Eigen::Index>(mesh.nodes.size()), 1);
}

/// A pressure that is x everywhere.
Eigen::VectorXd pressure_x(const CavitySpace& space, const CavityMesh& mesh)
{
  Eigen::VectorXd nodal(mesh.back.size());
  for (Eigen::Index i = 0; i < nodal.size(); ++i)
    nodal(i) = mesh.planform.nodes[static_cast<std::size_t>(i)].x();
  return space.from_nodes(nodal);
}

/// A pressure that is z everywhere in the low box, in a space of degree 1.
Eigen::VectorXd pressure_z(const CavitySpace& space, const CavityMesh& mesh)
{
  Eigen::VectorXd z = space.from_nodes(Eigen::VectorXd::Constant(mesh.back.size(), 0.5 * height));
  z(Eigen::seqN(1, mesh.back.size(), 2)).setConstant(0.5 * height);
  return z;
}

Eigen::MatrixXd flow_of(const CavitySpace& space, const CavityWall& wall, const Eigen::Vector3d& by)
{
  return wall_flow(space, wall, moved(*wall.mesh, by));
}

} // namespace

TEST_CASE("a top that moves up draws its planform times the way; what hangs over does not count")
{
  const CavityMesh mesh = low_box();
  const CavitySpace space(mesh, 2);
  const ShellMesh top = arched_top(height);
  const ShellMesh back = test::rectangle(0.31, 0.22, 3, 3, 2e-3);
  const Eigen::VectorXd up = flow_of(space, {.mesh = &top, .side = WallSide::top}, {0.0, 0.0, 1.0});
  const Eigen::VectorXd down = flow_of(space, {.mesh = &back, .side = WallSide::back}, {0.0, 0.0, 1.0});
  CHECK(up.dot(space.uniform()) == test::relative(length * width, 1e-10));
  CHECK((up + down).dot(space.uniform()) == doctest::Approx(0.0).epsilon(1e-12).scale(length * width));
}

TEST_CASE("the normal of a plate may point either way")
{
  const CavityMesh mesh = low_box();
  const CavitySpace space(mesh, 1);
  const ShellMesh back = test::rectangle(0.31, 0.22, 3, 3, 2e-3);
  ShellMesh turned = back;
  for (auto& t : turned.triangles)
    t = {t[0], t[2], t[1], t[8], t[7], t[6], t[5], t[4], t[3], t[9]};
  for (Eigen::Vector3d& n : turned.normals)
    n = -n;
  const Eigen::Vector3d by(0.1, 0.2, 1.0);
  const Eigen::MatrixXd a = flow_of(space, {.mesh = &back, .side = WallSide::back}, by);
  const Eigen::MatrixXd b = flow_of(space, {.mesh = &turned, .side = WallSide::back}, by);
  CHECK((a - b).cwiseAbs().maxCoeff() < 1e-12 * a.cwiseAbs().maxCoeff());
  CHECK(a.col(0).dot(space.uniform()) < 0.0);
}

TEST_CASE("a pressure that grows along z does work on the height of the wall that moves")
{
  // Pressure z over a lid at z = height, moved up: height times the area; moved along x a flat lid does no work.
  const CavityMesh mesh = low_box();
  const CavitySpace space(mesh, 1);
  const ShellMesh lid = test::lifted(test::rectangle(length, width, 5, 4, 2e-3), height);
  const Eigen::VectorXd z = pressure_z(space, mesh);
  CHECK(flow_of(space, {.mesh = &lid, .side = WallSide::top}, {0.0, 0.0, 1.0}).col(0).dot(z) ==
        test::relative(height * length * width, 1e-10));
  CHECK(flow_of(space, {.mesh = &lid, .side = WallSide::top}, {1.0, 0.0, 0.0}).cwiseAbs().maxCoeff() < 1e-15);
}

TEST_CASE("an arched top that moves along x pushes with its slopes")
{
  // Pressure x on z = H (1 - (2x/L)^2)(1 - (2y/W)^2): integral of x 8 H x / L^2 (1 - (2y/W)^2) over the planform.
  const CavityMesh mesh = low_box();
  const CavitySpace space(mesh, 0);
  const ShellMesh top = arched_top(height);
  const double along = 8.0 * 0.015 / (0.32 * 0.32) * 2.0 / 3.0 * std::pow(0.5 * length, 3);
  const double across = width - 4.0 / (0.22 * 0.22) * 2.0 / 3.0 * std::pow(0.5 * width, 3);
  const Eigen::VectorXd flow = flow_of(space, {.mesh = &top, .side = WallSide::top}, {1.0, 0.0, 0.0});
  // The arch is of degree four and its mesh cubic; quadrature points cross its edges.
  CHECK(flow.dot(pressure_x(space, mesh)) == test::relative(along * across, 1e-3));
}

TEST_CASE("ribs: the outward wall at x+ draws its area, one that faces it the opposite")
{
  const CavityMesh mesh = low_box();
  const CavitySpace space(mesh, 1);
  // Counter-clockwise round the box, a millimetre outside: the normals point out.
  const ShellMesh right = upright({0.151, -0.1}, {0.151, 0.1});
  const ShellMesh left = upright({-0.151, 0.1}, {-0.151, -0.1});
  const Eigen::Vector3d along_x(1.0, 0.0, 0.0);
  const Eigen::VectorXd out = flow_of(space, {.mesh = &right, .side = WallSide::ribs}, along_x);
  const Eigen::VectorXd in = flow_of(space, {.mesh = &left, .side = WallSide::ribs}, along_x);
  CHECK(out.dot(space.uniform()) == test::relative(width * height, 1e-10));
  CHECK(in.dot(space.uniform()) == test::relative(-width * height, 1e-10));
  CHECK(flow_of(space, {.mesh = &right, .side = WallSide::ribs, .outward = -1.0}, along_x).col(0).isApprox(-out));
  // A pressure x is 0.15 m there; one of z does the work of its mean.
  CHECK(out.dot(pressure_x(space, mesh)) == test::relative(0.15 * width * height, 1e-10));
  CHECK(out.dot(pressure_z(space, mesh)) == test::relative(0.5 * height * width * height, 1e-10));
}

TEST_CASE("a back in axes of its own, seen from outside, does what it does in those of the cavity")
{
  // Its z points down in the body: turned by half a turn about x.
  const CavityMesh mesh = low_box();
  const CavitySpace space(mesh, 1);
  const Eigen::Isometry3d placement =
      Eigen::Translation3d(0.0, 0.0, -0.001) * Eigen::AngleAxisd(std::acos(-1.0), Eigen::Vector3d::UnitX());
  const ShellMesh own = arched_top(0.0);
  ShellMesh in_body = own;
  for (Eigen::Vector3d& node : in_body.nodes)
    node = placement * node;
  const Eigen::Vector3d by(0.3, -0.2, 1.0);
  const Eigen::MatrixXd a = flow_of(space, {.mesh = &own, .side = WallSide::back, .placement = placement},
                                    placement.linear().transpose() * by);
  const Eigen::MatrixXd b = flow_of(space, {.mesh = &in_body, .side = WallSide::back}, by);
  CHECK((a - b).cwiseAbs().maxCoeff() < 1e-12 * b.cwiseAbs().maxCoeff());
  CHECK(b.col(0).dot(space.uniform()) == test::relative(-length * width, 0.05)); // slopes cancel but for the edge
}

TEST_CASE("a hole of a plate does not move with it")
{
  const CavityMesh mesh = low_box();
  const CavitySpace space(mesh, 0);
  ShellMesh top =
      test::grid_mesh({.x = {-0.15, -0.05, 0.0, 0.15},
                       .y = {-0.1, 0.0, 0.05, 0.1},
                       .surface = test::flat(),
                       .thickness = 2e-3,
                       .keep = [](double x, double y) { return !(x > -0.05 && x < 0.0 && y > 0.0 && y < 0.05); }});
  CHECK(flow_of(space, {.mesh = &top, .side = WallSide::top}, {0.0, 0.0, 1.0}).sum() ==
        test::relative(length * width - 0.05 * 0.05, 1e-10));
}

TEST_CASE("wrong walls are refused")
{
  const CavityMesh mesh = low_box();
  const CavitySpace space(mesh, 0);
  const ShellMesh far_away = upright({0.5, -0.1}, {0.5, 0.1});
  CHECK_THROWS_AS(static_cast<void>(flow_of(space, {.mesh = &far_away, .side = WallSide::ribs}, {1.0, 0.0, 0.0})),
                  InvalidInput);
  CHECK_THROWS_AS(
      static_cast<void>(wall_flow(space, {.mesh = &far_away, .side = WallSide::ribs}, Eigen::MatrixXd::Zero(5, 1))),
      InvalidInput);
}

TEST_CASE("forces of a pressure on a wall: their sum is pressure times area, their work that of the flow")
{
  const CavityMesh mesh = low_box();
  const CavitySpace space(mesh, 2);
  const ShellMesh top = arched_top(height);
  const ShellMesh side = upright({0.5 * length, -0.5 * width}, {0.5 * length, 0.5 * width});
  const Eigen::Isometry3d turned(Eigen::AngleAxisd(0.3, Eigen::Vector3d::UnitZ()));
  ShellMesh turned_top = top;
  for (Eigen::Vector3d& node : turned_top.nodes)
    node = turned.inverse() * node;
  const auto sum_of = [](const Eigen::MatrixXd& forces) -> Eigen::Vector3d
  { return forces.reshaped(3, forces.rows() / 3).rowwise().sum(); };
  // By hand: 2 Pa on the planform of the lid, on a wall that faces +x, and on the lid in axes of its own.
  const CavityWall lid = {.mesh = &top, .side = WallSide::top};
  const CavityWall wall = {.mesh = &side, .side = WallSide::ribs};
  const CavityWall turned_lid = {.mesh = &turned_top, .side = WallSide::top, .outward = 1.0, .placement = turned};
  const Eigen::VectorXd even = 2.0 * space.uniform();
  CHECK(sum_of(wall_forces(space, lid, even)).z() == test::relative(2.0 * length * width, 1e-10));
  CHECK(sum_of(wall_forces(space, wall, even)).x() == test::relative(2.0 * width * height, 1e-10));
  // Work of an uneven pressure on an uneven motion, from either side.
  const Eigen::VectorXd uneven = even + 3.0 * pressure_x(space, mesh).cwiseAbs2();
  for (const CavityWall& any : {lid, wall, turned_lid})
  {
    Eigen::MatrixXd u(3 * static_cast<Eigen::Index>(any.mesh->nodes.size()), 1);
    for (Eigen::Index i = 0; i < u.size(); ++i)
      u(i) = std::sin(1.7 * static_cast<double>(i));
    const double by_flow = (wall_flow(space, any, u).transpose() * uneven)(0);
    CHECK((u.transpose() * wall_forces(space, any, uneven))(0) == test::relative(by_flow, 1e-10));
  }
  CHECK_THROWS_AS(static_cast<void>(wall_forces(space, lid, Eigen::VectorXd::Ones(3))), InvalidInput);
}
