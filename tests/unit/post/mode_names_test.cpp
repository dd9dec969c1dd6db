// SPDX-License-Identifier: MPL-2.0
#include "sample_models.h"

#include <plate/post/mode_names.h>

#include <doctest/doctest.h>

#include <cmath>
#include <functional>
#include <string>
#include <vector>

using namespace plate;

namespace
{

constexpr double length = 0.36; // [m]
constexpr double width = 0.20;  // [m]

ShellMesh plate_mesh()
{
  return test::rectangle(length, width, 6, 4, 3e-3);
}

/// A field of coordinates scaled to -1...1.
Eigen::VectorXd field(const ShellMesh& mesh, const std::function<double(double, double)>& f)
{
  Eigen::VectorXd w(static_cast<Eigen::Index>(mesh.nodes.size()));
  for (std::size_t i = 0; i < mesh.nodes.size(); ++i)
    w(static_cast<Eigen::Index>(i)) = f(2.0 * mesh.nodes[i].x() / length, 2.0 * mesh.nodes[i].y() / width);
  return w;
}

double twist(double u, double v)
{
  return u * v;
}
double cross(double u, double v)
{
  return u * u - v * v;
}
double ring(double u, double v)
{
  return 1.0 -
         2.25 * (1.0 - u * u) * (1.0 - v * v); // without mean: a free plate's mode leaves the centre of mass alone
}
/// Moves the middles of both sides against each other: what an off-centre bar mixes with the ring.
double rocking(double u, double v)
{
  return v * (1.0 - u * u);
}
double long_bending(double u, double)
{
  return u * u * u - 0.6 * u;
}
double second_twist(double u, double v)
{
  return (u * u - 0.4) * v;
}

} // namespace

TEST_CASE("a pure shape is fully like itself and hardly like the others")
{
  const ShellMesh mesh = plate_mesh();
  const ShapeLikeness t = shape_likeness(mesh, field(mesh, twist));
  CHECK(t.twist == doctest::Approx(1.0));
  CHECK(t.cross < 0.01);
  CHECK(t.ring < 0.01);
  const ShapeLikeness c = shape_likeness(mesh, field(mesh, cross));
  CHECK(c.cross > 0.9); // its mean along the edge of an oblong plate is not quite zero
  CHECK(c.twist < 0.01);
  CHECK(c.ring < 0.1);
  const ShapeLikeness r = shape_likeness(mesh, field(mesh, ring));
  CHECK(r.ring == doctest::Approx(1.0)); // the very pattern
  CHECK(r.twist < 0.01);
}

TEST_CASE("modes are named by shape wherever they come, and the rest has no name")
{
  const ShellMesh mesh = plate_mesh();
  Eigen::MatrixXd w(static_cast<Eigen::Index>(mesh.nodes.size()), 5);
  w << field(mesh, ring), field(mesh, second_twist), -5.0 * field(mesh, cross), field(mesh, long_bending),
      0.01 * field(mesh, twist);
  CHECK(name_modes(mesh, w) == std::vector<std::string>{"M5", "", "M2", "", "M1"});
}

TEST_CASE("a ring that is spread over two modes keeps its share in each, and the greater one has the name")
{
  const ShellMesh mesh = plate_mesh();
  // Mean squares over the plate, by integration of the polynomials: ring 81/16 (64/225 - 16/81), rocking 8/45.
  const double ring_square = 81.0 / 16.0 * (64.0 / 225.0 - 16.0 / 81.0);
  const double rocking_square = 8.0 / 45.0;
  const auto mixed = [&](double share)
  {
    return Eigen::VectorXd(std::sqrt(share / ring_square) * field(mesh, ring) +
                           std::sqrt((1.0 - share) / rocking_square) * field(mesh, rocking));
  };
  CHECK(shape_likeness(mesh, mixed(0.4)).ring == doctest::Approx(0.4).epsilon(0.02)); // nodes sample the squares
  Eigen::MatrixXd w(static_cast<Eigen::Index>(mesh.nodes.size()), 2);
  w << mixed(0.4), mixed(0.6);
  CHECK(name_modes(mesh, w) == std::vector<std::string>{"", "M5"});
  w << mixed(0.2), mixed(0.1);
  CHECK(name_modes(mesh, w) == std::vector<std::string>{"", ""});
}

TEST_CASE("bending along the plate alone is no ring")
{
  const ShellMesh mesh = plate_mesh();
  const Eigen::MatrixXd w = field(mesh, [](double u, double) { return u * u - 1.0 / 3.0; });
  CHECK(name_modes(mesh, w) == std::vector<std::string>{"M2"}); // the ends against the sides
}

TEST_CASE("of two like shapes the purer one gets the name")
{
  const ShellMesh mesh = plate_mesh();
  Eigen::MatrixXd w(static_cast<Eigen::Index>(mesh.nodes.size()), 2);
  w << field(mesh, [](double u, double v) { return twist(u, v) + 0.3 * long_bending(u, v); }), field(mesh, twist);
  CHECK(name_modes(mesh, w) == std::vector<std::string>{"", "M1"});
}

TEST_CASE("a plate at rest is like nothing")
{
  const ShellMesh mesh = plate_mesh();
  const ShapeLikeness like = shape_likeness(mesh, Eigen::VectorXd::Zero(static_cast<Eigen::Index>(mesh.nodes.size())));
  CHECK(like.twist == 0.0);
  CHECK(like.ring == 0.0);
}

TEST_CASE("holes are not the edge that names look at")
{
  test::GridPlate grid = {.x = {-0.18, -0.1, -0.05, 0.05, 0.1, 0.18},
                          .y = {-0.1, -0.03, 0.03, 0.1},
                          .surface = test::flat(),
                          .thickness = 3e-3};
  grid.keep = [](double x, double y) { return !(std::abs(x) < 0.05 && std::abs(y) < 0.03); };
  const ShellMesh mesh = test::grid_mesh(grid);
  // Both move the outline alike, the second one shakes wildly round the hole.
  const auto shaking = [](double u, double v) { return cross(u, v) + 50.0 * (1 - u * u) * (1 - v * v) * u * v; };
  const ShapeLikeness still = shape_likeness(mesh, field(mesh, cross));
  const ShapeLikeness wild = shape_likeness(mesh, field(mesh, shaking));
  CHECK(wild.cross == doctest::Approx(still.cross).epsilon(1e-12));
  CHECK(wild.twist < 1e-12);
}
