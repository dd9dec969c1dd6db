// SPDX-License-Identifier: MPL-2.0
#include "relative.h"
#include "viola.h"

#include <plate/core/error.h>
#include <plate/meshes/body_mesh.h>

#include <doctest/doctest.h>

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>

using namespace plate;

namespace
{

constexpr double overhang = 0.003; // [m]

PlateGeometry plain(const Outline& outline)
{
  return {.outline = outline,
          .arching = FlatArching{},
          .thickness = UniformThickness{0.003},
          .soundholes = {},
          .bar = std::nullopt};
}

const std::array<int, 4>& edge_at(const std::vector<std::array<int, 4>>& line, std::size_t i)
{
  return line[i % line.size()];
}

std::vector<RibEdge> edges_at(const PlanformMesh& mesh, double z)
{
  std::vector<RibEdge> edges;
  for (const auto& line_edge : rib_line(mesh))
  {
    RibEdge& edge = edges.emplace_back();
    for (std::size_t k = 0; k < 4; ++k)
      edge[k] << mesh.nodes[static_cast<std::size_t>(line_edge[k])], z;
  }
  return edges;
}

std::vector<RibPiece> ribs_between(const std::vector<RibEdge>& lower, const std::vector<RibEdge>& upper,
                                   const RibMeasures& measures)
{
  return rib_meshes(lower, upper, measures, rib_layout(lower, upper, measures));
}

/// Sum of the areas of the flat triangles between neighbouring nodes.
double area(const ShellMesh& mesh)
{
  constexpr int small[9][3] = {{0, 3, 8}, {3, 9, 8}, {3, 4, 9}, {4, 5, 9}, {4, 1, 5},
                               {8, 9, 7}, {9, 6, 7}, {9, 5, 6}, {7, 6, 2}};
  double sum = 0.0;
  for (const auto& t : mesh.triangles)
    for (const auto& s : small)
    {
      const auto at = [&](int k) { return mesh.nodes[static_cast<std::size_t>(t[static_cast<std::size_t>(s[k])])]; };
      sum += 0.5 * (at(1) - at(0)).cross(at(2) - at(0)).norm();
    }
  return sum;
}

double area(const std::vector<RibPiece>& pieces, RibBand band)
{
  for (const RibPiece& piece : pieces)
    if (piece.band == band)
      return area(piece.mesh);
  return 0.0;
}

} // namespace

TEST_CASE("ribs stand on a closed line as far inside a rectangle as its edges overhang")
{
  const PlateGeometry plate = plain(RectangleOutline{0.35, 0.2});
  const BodyPlates plates = mesh_body_plates(plate, plate, overhang);
  const auto line = rib_line(plates.top);
  double round = 0.0;
  for (std::size_t i = 0; i < line.size(); ++i)
  {
    CHECK(line[i][3] == edge_at(line, i + 1)[0]);
    for (std::size_t k = 0; k < 4; ++k)
    {
      const Eigen::Vector2d p = plates.top.nodes[static_cast<std::size_t>(line[i][k])];
      CHECK(std::min(0.175 - std::abs(p.x()), 0.1 - std::abs(p.y())) == test::relative(overhang));
    }
    round += (plates.top.nodes[static_cast<std::size_t>(line[i][3])] -
              plates.top.nodes[static_cast<std::size_t>(line[i][0])])
                 .norm();
  }
  CHECK(round == test::relative(2.0 * (0.35 + 0.2 - 4.0 * overhang)));
}

TEST_CASE("a back has nodes across from those of a top with holes and bar")
{
  const PlateGeometry top = test::viola_top();
  for (const Outline& outline : {Outline(test::viola_outline()), Outline(EllipseOutline{0.35, 0.2})})
  {
    const bool viola = std::holds_alternative<BoutsOutline>(outline);
    const PlateGeometry back = plain(outline);
    const BodyPlates plates = mesh_body_plates(viola ? top : back, back, overhang);
    const auto upper = rib_line(plates.top);
    const auto lower = rib_line(plates.back);
    REQUIRE(upper.size() == lower.size());
    double most = 0.0;
    for (const auto& edge : upper)
      for (const int node : edge)
      {
        const Eigen::Vector2d p = plates.top.nodes[static_cast<std::size_t>(node)];
        double least = 1.0;
        for (const auto& other : lower)
          for (const int facing : other)
          {
            const Eigen::Vector2d q = plates.back.nodes[static_cast<std::size_t>(facing)];
            least = std::min(least, std::hypot(p.x() - q.x(), p.y() + q.y()));
          }
        most = std::max(most, least);
      }
    CHECK(most < 1e-7);
  }
}

TEST_CASE("plates of different outlines make no body")
{
  const PlateGeometry top = plain(RectangleOutline{0.35, 0.2});
  CHECK_THROWS_WITH_AS(static_cast<void>(mesh_body_plates(top, plain(RectangleOutline{0.35, 0.21}), overhang)),
                       doctest::Contains("5 mm apart"), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(mesh_body_plates(top, plain(EllipseOutline{0.35, 0.2}), overhang)), InvalidInput);
  CHECK_THROWS_WITH_AS(static_cast<void>(mesh_body_plates(top, top, 0.0)), doctest::Contains("overhang"), InvalidInput);
}

TEST_CASE("ribs of a box: area, bands and outward normals")
{
  const PlateGeometry plate = plain(RectangleOutline{0.35, 0.2});
  const PlanformMesh mesh = mesh_body_plates(plate, plate, overhang).top;
  const double round = 2.0 * (0.35 + 0.2 - 4.0 * overhang);
  const RibMeasures measures = {.size = 0.015, .lining = 0.008};
  const std::vector<RibPiece> pieces = ribs_between(edges_at(mesh, -0.038), edges_at(mesh, 0.0), measures);
  REQUIRE(pieces.size() == 2);
  CHECK(area(pieces, RibBand::plain) == test::relative(0.022 * round));
  CHECK(area(pieces, RibBand::lining) == test::relative(0.016 * round));
  for (const RibPiece& piece : pieces)
    for (const auto& t : piece.mesh.triangles)
    {
      const auto at = [&](std::size_t k) { return piece.mesh.nodes[static_cast<std::size_t>(t[k])]; };
      const Eigen::Vector3d normal = (at(1) - at(0)).cross(at(2) - at(0)).normalized();
      CHECK(normal.dot(piece.mesh.normals[static_cast<std::size_t>(t[9])]) > 1.0 - 1e-12);
      Eigen::Vector3d outward = at(9);
      outward.z() = 0.0;
      CHECK(normal.dot(outward) > 0.0);
    }
  CHECK_THROWS_WITH_AS(static_cast<void>(ribs_between(edges_at(mesh, -0.015), edges_at(mesh, 0.0), measures)),
                       doctest::Contains("leave nothing"), InvalidInput);
}

TEST_CASE("blocks stand at both ends and in the corners, about as far as asked for")
{
  const PlateGeometry plate = plain(RectangleOutline{0.35, 0.2});
  const PlanformMesh mesh = mesh_body_plates(plate, plate, overhang, 0.01).top;
  const RibMeasures measures = {.size = 0.01, .lining = 0.008, .end_block = 0.05, .corner_block = 0.03};
  const std::vector<RibPiece> pieces = ribs_between(edges_at(mesh, -0.04), edges_at(mesh, 0.0), measures);
  // Edges are 10 mm long at most: each of the two ends of a block is off by half of that. The share tells how much.
  for (const RibPiece& piece : pieces)
  {
    const double length = area(piece.mesh) / 0.04;
    const double wanted = piece.band == RibBand::end_block ? 2.0 * 0.05 : 8.0 * 0.03;
    if (piece.band == RibBand::plain || piece.band == RibBand::lining)
      continue;
    CHECK(length == test::relative(wanted, 0.2));
    CHECK(length * piece.backing_share == test::relative(wanted));
  }
  CHECK(pieces.size() == 4);
}
