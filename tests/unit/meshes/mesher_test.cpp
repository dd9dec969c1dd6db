// SPDX-License-Identifier: MPL-2.0
#include "viola.h"

#include <plate/core/error.h>
#include <plate/meshes/mesher.h>
#include <plate/post/surface_integral.h>

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

using namespace plate;

namespace
{

PlateGeometry rectangle(std::vector<Soundhole> holes = {})
{
  return {.outline = RectangleOutline{0.35, 0.2},
          .arching = BiparabolicArching{0.015},
          .thickness = UniformThickness{0.0025},
          .soundholes = std::move(holes),
          .bar = std::nullopt};
}

double relative_area_error(const PlanformMesh& mesh, const PlateGeometry& geometry)
{
  return mesh_quality(mesh).area / planform_area(geometry) - 1.0;
}

double group_length(const ShellMesh& mesh, const std::string& name)
{
  double length = 0.0;
  for (const EdgeGroup& group : mesh.boundary)
    if (group.name == name)
      for (const auto& e : group.edges)
        for (std::size_t k = 0; k < 3; ++k)
          length +=
              (mesh.nodes[static_cast<std::size_t>(e[k + 1])] - mesh.nodes[static_cast<std::size_t>(e[k])]).norm();
  return length;
}

} // namespace

TEST_CASE("meshes cover the plate: area of the curves, no triangle inside out")
{
  const PlateGeometry ellipse{.outline = EllipseOutline{0.35, 0.2},
                              .arching = EllipticArching{0.015},
                              .thickness = UniformThickness{0.003},
                              .soundholes = {},
                              .bar = std::nullopt};
  const Slot slot{.centre = {-0.02, 0.06}, .length = 0.07, .width = 0.006, .angle = Angle::degrees(-12.0)};
  for (const PlateGeometry& geometry : {rectangle(), rectangle({slot}), ellipse, test::viola_top()})
  {
    const PlanformMesh mesh = mesh_planform(geometry);
    const MeshQuality quality = mesh_quality(mesh);
    CHECK(std::abs(relative_area_error(mesh, geometry)) < 1e-5);
    CHECK(quality.least_jacobian > 0.1);
    CHECK(quality.least_angle > 3.0 * std::numbers::pi / 180.0);
  }
}

TEST_CASE("the same input gives the same mesh, bit for bit")
{
  const PlanformMesh a = mesh_planform(test::viola_top());
  const PlanformMesh b = mesh_planform(test::viola_top());
  CHECK(a.triangles == b.triangles);
  REQUIRE(a.nodes.size() == b.nodes.size());
  CHECK(std::equal(a.nodes.begin(), a.nodes.end(), b.nodes.begin()));
}

TEST_CASE("a strip of the asked width runs along a free edge")
{
  // The inner nodes of the strip stand 3 mm inside the sides of the rectangle.
  const PlanformMesh mesh = mesh_planform(rectangle(), {.size = 0.02, .strip_width = 0.003});
  int on_strip_line = 0;
  for (const Eigen::Vector2d& p : mesh.nodes)
    if (std::abs(p.y() - 0.097) < 1e-9 && std::abs(p.x()) <= 0.172 + 1e-9)
      ++on_strip_line;
  CHECK(on_strip_line >= 3 * 14); // three nodes for each edge of about 20 mm
}

TEST_CASE("a lifted mesh lies on the arch with its normals, and its outer sides are named")
{
  const PlateGeometry geometry = rectangle();
  const ShellMesh shell = lift(mesh_planform(geometry), geometry);
  for (std::size_t i = 0; i < shell.nodes.size(); ++i)
  {
    const Eigen::Vector3d& p = shell.nodes[i];
    const double u = 1.0 - std::pow(2.0 * p.x() / 0.35, 2), v = 1.0 - std::pow(2.0 * p.y() / 0.2, 2);
    CHECK(std::abs(p.z() - 0.015 * u * v) < 1e-14);
    const double z_x = -8.0 * p.x() / (0.35 * 0.35) * 0.015 * v;
    const double z_y = -8.0 * p.y() / (0.2 * 0.2) * 0.015 * u;
    CHECK((shell.normals[i] - Eigen::Vector3d(-z_x, -z_y, 1.0).normalized()).norm() < 1e-12);
    CHECK(shell.thickness[i] == 0.0025);
  }
  CHECK(group_length(shell, "x-") == doctest::Approx(0.2).epsilon(1e-6));
  CHECK(group_length(shell, "y+") == doctest::Approx(0.35).epsilon(1e-6));
  CHECK(group_length(shell, "outline") == 0.0);
}

TEST_CASE("boundary edges run with the plate to their left and holes are groups of their own")
{
  const PlateGeometry geometry = test::viola_top();
  const ShellMesh shell = lift(mesh_planform(geometry), geometry);
  REQUIRE(shell.boundary.size() == 3);
  CHECK(shell.boundary[0].name == "outline");
  CHECK(shell.boundary[1].name == "hole 1");
  CHECK(shell.boundary[2].name == "hole 2");
  // Shoelace formula: the outline runs counter-clockwise, a hole clockwise.
  for (std::size_t g = 0; g < 3; ++g)
  {
    double twice_area = 0.0;
    for (const auto& e : shell.boundary[g].edges)
      for (std::size_t k = 0; k < 3; ++k)
      {
        const Eigen::Vector3d& a = shell.nodes[static_cast<std::size_t>(e[k])];
        const Eigen::Vector3d& b = shell.nodes[static_cast<std::size_t>(e[k + 1])];
        twice_area += a.x() * b.y() - b.x() * a.y();
      }
    CHECK((g == 0 ? twice_area > 0.0 : twice_area < 0.0));
  }
}

TEST_CASE("the bar's footprint covers its rectangle, its station runs along it")
{
  PlateGeometry geometry = test::viola_top();
  geometry.arching = FlatArching{};
  geometry.bar->angle = Angle::degrees(1.5);
  const ShellMesh shell = lift(mesh_planform(geometry), geometry);
  REQUIRE(shell.bars.size() == 1);
  const BarFootprint& bar = shell.bars[0];
  ShellMesh under_bar = shell;
  under_bar.triangles.clear();
  for (const int t : bar.triangles)
    under_bar.triangles.push_back(shell.triangles[static_cast<std::size_t>(t)]);
  CHECK(nodal_areas(under_bar).sum() == doctest::Approx(0.310 * 0.0055).epsilon(1e-9));
  // On the bass side, y > 0: its middle is where the measures put it.
  const Eigen::VectorXd areas = nodal_areas(under_bar);
  Eigen::Vector2d middle(0.0, 0.0);
  for (std::size_t i = 0; i < shell.nodes.size(); ++i)
    middle += areas(static_cast<Eigen::Index>(i)) / areas.sum() * shell.nodes[i].head<2>();
  CHECK((middle - Eigen::Vector2d(geometry.bar->centre, geometry.bar->offset)).norm() < 1e-9);
  const auto [low, high] = std::minmax_element(bar.station.begin(), bar.station.end());
  CHECK(*low == doctest::Approx(-0.155).epsilon(1e-9));
  CHECK(*high == doctest::Approx(0.155).epsilon(1e-9));
  CHECK(bar.axis.x() == doctest::Approx(std::cos(Angle::degrees(1.5).in_radians())).epsilon(1e-12));
}

TEST_CASE("a moved mesh keeps its triangles and covers the changed plate")
{
  const PlateGeometry before = test::viola_top();
  const PlanformMesh mesh = mesh_planform(before);
  const PlanformMesh same = move_planform(mesh, before);
  CHECK(same.triangles == mesh.triangles);
  for (std::size_t i = 0; i < mesh.nodes.size(); ++i)
    CHECK((same.nodes[i] - mesh.nodes[i]).norm() < 1e-15);

  PlateGeometry after = before;
  std::get<BoutsOutline>(after.outline).lower_bout += 0.003;
  std::get<FHole>(after.soundholes[0]).length = 0.082;
  after.bar->offset += 0.001;
  const PlanformMesh moved = move_planform(mesh, after);
  CHECK(moved.triangles == mesh.triangles);
  CHECK(std::abs(relative_area_error(moved, after)) < 1e-5);
  CHECK(mesh_quality(moved).least_jacobian > 0.1);
}

TEST_CASE("a mesh cannot follow a change of what there is")
{
  const PlanformMesh mesh = mesh_planform(rectangle());
  PlateGeometry other = rectangle();
  other.outline = EllipseOutline{0.35, 0.2};
  CHECK_THROWS_AS(static_cast<void>(move_planform(mesh, other)), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(mesh_planform(rectangle(), {.size = -1.0, .strip_width = 0.0})), InvalidInput);
}
