// SPDX-License-Identifier: MPL-2.0
// Plates that are the same plate seen differently have the same frequencies. A symmetric arch hides a wrong sign of the
// coupling in carved wood; these arches are not symmetric and the grain is turned.
#include "sample_models.h"

#include <plate/solvers/modal.h>

#include <doctest/doctest.h>

#include <Eigen/Geometry>

#include <array>
#include <cmath>
#include <utility>
#include <vector>

using namespace plate;

namespace
{

const std::vector<double> lines_x = {-0.15, -0.09, -0.03, 0.03, 0.09, 0.15};
const std::vector<double> lines_y = {-0.08, -0.03, 0.03, 0.08};

/// An arch without symmetry, steep to one side and towards one end.
test::Surface slanted_arch()
{
  return {.position =
              [](double x, double y)
          {
            return Eigen::Vector3d(
                x, y, 0.02 - 1.2 * x * x - 2.5 * y * y + 0.25 * y + 0.1 * x + 1.5 * x * y + 3.0 * x * x * y);
          },
          .normal =
              [](double x, double y)
          {
            const double zx = -2.4 * x + 0.1 + 1.5 * y + 6.0 * x * y;
            const double zy = -5.0 * y + 0.25 + 1.5 * x + 3.0 * x * x;
            return Eigen::Vector3d(-zx, -zy, 1.0).normalized();
          }};
}

Model slanted_plate(double degrees, Grain grain)
{
  const ShellMesh mesh = test::grid_mesh({.x = lines_x, .y = lines_y, .surface = slanted_arch(), .thickness = 3e-3});
  return test::plate_model(mesh, test::solid(test::reference_spruce(), 3e-3, degrees, grain));
}

/// The mesh mirrored in a coordinate plane; corners change places so that they stay counter-clockwise from outside.
ShellMesh mirrored(ShellMesh mesh, int axis)
{
  for (auto* vectors : {&mesh.nodes, &mesh.normals})
    for (Eigen::Vector3d& v : *vectors)
      v(axis) = -v(axis);
  for (auto& t : mesh.triangles)
    t = {t[0], t[2], t[1], t[8], t[7], t[6], t[5], t[4], t[3], t[9]};
  for (EdgeGroup& group : mesh.boundary)
    for (auto& edge : group.edges)
      edge = {edge[3], edge[2], edge[1], edge[0]};
  return mesh;
}

Eigen::VectorXd frequencies(const Model& model)
{
  return solve_modes(assemble(model), {.num_modes = 8}).frequencies_hz;
}

/// Largest relative difference.
double difference(const Eigen::VectorXd& a, const Eigen::VectorXd& b)
{
  return (a.cwiseQuotient(b).array() - 1.0).abs().maxCoeff();
}

} // namespace

TEST_CASE("mirroring the arch and turning the grain the other way is the same plate")
{
  for (const Grain grain : {Grain::carved, Grain::laid})
    for (const int axis : {0, 1})
    {
      const Model plate_15 = slanted_plate(15, grain);
      Model mirror = slanted_plate(-15, grain);
      mirror.mesh = mirrored(mirror.mesh, axis);
      CHECK(difference(frequencies(plate_15), frequencies(mirror)) < 1e-7);
      // Without turning the grain it is another plate: the check can fail.
      Model other = slanted_plate(15, grain);
      other.mesh = mirrored(other.mesh, axis);
      CHECK(difference(frequencies(plate_15), frequencies(other)) > 1e-3);
    }
}

TEST_CASE("half a turn about the vertical leaves a plate as it was, for the grain has no direction")
{
  for (const Grain grain : {Grain::carved, Grain::laid})
  {
    const Model model = slanted_plate(15, grain);
    Model turned = model;
    for (auto* vectors : {&turned.mesh.nodes, &turned.mesh.normals})
      for (Eigen::Vector3d& v : *vectors)
        v.head<2>() = -v.head<2>();
    CHECK(difference(frequencies(model), frequencies(turned)) < 1e-7);
  }
}

TEST_CASE("a plate seen from the other side is the same plate")
{
  // Half a turn about the body's axis: what was outside is inside. Normals point to the new outside, the stack and the
  // sense of the angle turn over.
  Model model = slanted_plate(15, Grain::carved);
  Model over = slanted_plate(-15, Grain::carved);
  for (Eigen::Vector3d& v : over.mesh.nodes)
    v.tail<2>() = -v.tail<2>();
  for (Eigen::Vector3d& v : over.mesh.normals)
    v = Eigen::Vector3d(-v.x(), v.y(), v.z());
  for (auto& t : over.mesh.triangles)
    t = {t[0], t[2], t[1], t[8], t[7], t[6], t[5], t[4], t[3], t[9]};
  CHECK(difference(frequencies(model), frequencies(over)) < 1e-7);
}

TEST_CASE("turning plate and board together in space changes nothing")
{
  const Eigen::Matrix3d R = (Eigen::AngleAxisd(1.1, Eigen::Vector3d(1, -2, 0.5).normalized()) *
                             Eigen::AngleAxisd(0.6, Eigen::Vector3d::UnitZ()))
                                .toRotationMatrix();
  const Model model = slanted_plate(15, Grain::carved);
  Model turned = model;
  for (Eigen::Vector3d& v : turned.mesh.nodes)
    v = R * v + Eigen::Vector3d(0.1, 0.2, -0.3);
  for (Eigen::Vector3d& v : turned.mesh.normals)
    v = R * v;
  turned.material.axes = {.axis = R * model.material.axes.axis, .up = R * model.material.axes.up};
  CHECK(difference(frequencies(model), frequencies(turned)) < 1e-7);
}
