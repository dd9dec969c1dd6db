// SPDX-License-Identifier: MPL-2.0
#include "sample_models.h"

#include <plate/elements/cubic_triangle.h>
#include <plate/mesh/locate.h>

#include <doctest/doctest.h>

#include <random>

using namespace plate;

namespace
{

Eigen::Vector2d place_of(const ShellMesh& mesh, const MeshPoint& point)
{
  const CubicTriangle::Vector N = CubicTriangle::shape(point.xi, point.eta);
  Eigen::Vector2d place = Eigen::Vector2d::Zero();
  for (int i = 0; i < CubicTriangle::num_nodes; ++i)
    place +=
        N(i) *
        mesh.nodes[static_cast<std::size_t>(mesh.triangles[point.triangle][static_cast<std::size_t>(i)])].head<2>();
  return place;
}

} // namespace

TEST_CASE("points of a distorted mesh are found where they are")
{
  ShellMesh mesh = test::rectangle(0.3, 0.2, 6, 4, 3e-3);
  test::distort(mesh, 0.3, 0.2, 0.25);
  std::mt19937 random(7);
  std::uniform_real_distribution<double> uniform(-0.5, 0.5);
  for (int i = 0; i < 200; ++i)
  {
    const Eigen::Vector2d wanted(0.3 * uniform(random), 0.2 * uniform(random));
    const std::optional<MeshPoint> found = locate(mesh, wanted);
    REQUIRE(found.has_value());
    CHECK((place_of(mesh, *found) - wanted).norm() < 1e-12);
    CHECK(found->xi > -1e-3);
    CHECK(found->eta > -1e-3);
    CHECK(found->xi + found->eta < 1.0 + 1e-3);
  }
}

TEST_CASE("corners and edges are found, points beside the mesh or in a hole are not")
{
  test::GridPlate grid = {
      .x = {-0.1, -0.03, 0.03, 0.1}, .y = {-0.1, -0.03, 0.03, 0.1}, .surface = test::flat(), .thickness = 2e-3};
  grid.keep = [](double x, double y) { return std::abs(x) > 0.03 || std::abs(y) > 0.03; };
  const ShellMesh mesh = test::grid_mesh(grid);
  CHECK(locate(mesh, {0.1, 0.1}).has_value());
  CHECK(locate(mesh, {-0.1, 0.05}).has_value());
  CHECK(locate(mesh, {0.03, 0.0}).has_value());
  CHECK_FALSE(locate(mesh, {0.0, 0.0}).has_value());
  CHECK_FALSE(locate(mesh, {0.101, 0.0}).has_value());
}

TEST_CASE("points at the bulge of a curved side are found, also by a locator for many points")
{
  // One side of a rectangle bent outward: its middle reaches beyond the nodes at thirds.
  ShellMesh mesh = test::rectangle(0.2, 0.1, 1, 1, 2e-3);
  const auto side = [](double x) { return 0.05 + 0.02 * (1.0 - 100.0 * x * x); }; // [m]
  for (Eigen::Vector3d& node : mesh.nodes)
    node.y() = (node.y() + 0.05) / 0.1 * (side(node.x()) + 0.05) - 0.05;
  const PointLocator locator(mesh);
  const Eigen::Vector2d crest(0.0, side(0.0) - 1e-6);
  CHECK(crest.y() > side(0.2 / 6.0) + 2e-3); // above all nodes
  for (const auto& found : {locate(mesh, crest), locator.locate(crest)})
  {
    REQUIRE(found.has_value());
    CHECK((place_of(mesh, *found) - crest).norm() < 1e-12);
  }
  CHECK_FALSE(locator.locate({0.0, side(0.0) + 1e-3}).has_value());
  CHECK_FALSE(locator.locate({5.0, -3.0}).has_value());
}
