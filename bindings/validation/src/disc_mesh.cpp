// SPDX-License-Identifier: MPL-2.0
#include <plate/validation/disc_mesh.h>

#include <array>
#include <cmath>
#include <map>
#include <numbers>
#include <utility>

namespace plate::validation
{
namespace
{

constexpr int num_sectors = 6; // with as many elements along a ring as its number: near equilateral

/// A node by thirds of rings from the middle, and its place along a sector, 0 to `ring`.
struct Place
{
  int ring;
  int along;
};

/// Between two corners.
Place step_between(Place a, Place b, int thirds)
{
  return {a.ring + (b.ring - a.ring) / 3 * thirds, a.along + (b.along - a.along) / 3 * thirds};
}

class DiscBuilder
{
public:
  explicit DiscBuilder(const Disc& disc) : disc_(disc) {}

  int node(int sector, Place place)
  {
    const int round = num_sectors * place.ring;
    const int position = place.ring == 0 ? 0 : (sector * place.ring + place.along) % round;
    const auto [it, is_new] = index_.try_emplace({place.ring, position}, static_cast<int>(mesh.nodes.size()));
    if (is_new)
    {
      const Eigen::Vector2d at = planform(sector, place);
      mesh.nodes.push_back(disc_.surface.position(at.x(), at.y()));
      mesh.normals.push_back(disc_.surface.normal(at.x(), at.y()));
      mesh.thickness.push_back(disc_.thickness);
    }
    return it->second;
  }

  void add_triangle(int sector, const std::array<Place, 3>& corners)
  {
    std::array<int, ShellMesh::nodes_per_triangle> nodes = {};
    for (std::size_t i = 0; i < 3; ++i)
    {
      nodes[i] = node(sector, corners[i]);
      nodes[3 + 2 * i] = node(sector, step_between(corners[i], corners[(i + 1) % 3], 1));
      nodes[4 + 2 * i] = node(sector, step_between(corners[i], corners[(i + 1) % 3], 2));
    }
    nodes[9] = node(sector, {(corners[0].ring + corners[1].ring + corners[2].ring) / 3,
                             (corners[0].along + corners[1].along + corners[2].along) / 3});
    mesh.triangles.push_back(nodes);
  }

  ShellMesh mesh;

private:
  /// On straight lines between the corners but at the edge: triangles that are bent in their plane are much stiffer.
  Eigen::Vector2d planform(int sector, Place place) const
  {
    const int inner = place.ring / 3 * 3;
    const int right = place.along / 3 * 3;
    const int u = place.ring - inner;
    const int v = place.along - right;
    if (u == 0 && (v == 0 || place.ring == 3 * static_cast<int>(disc_.rings.size())))
      return on_ring(sector, place);
    const auto corner = [&](int ring, int along) { return on_ring(sector, {inner + ring, right + along}); };
    if (u == 0)
      return corner(0, 0) + v / 3.0 * (corner(0, 3) - corner(0, 0));
    const Eigen::Vector2d radial = corner(3, 0) - corner(0, 0);
    const Eigen::Vector2d diagonal = corner(3, 3) - corner(0, 0);
    if (v <= u)
      return corner(0, 0) + (u - v) / 3.0 * radial + v / 3.0 * diagonal;
    return corner(0, 0) + u / 3.0 * diagonal + (v - u) / 3.0 * (corner(0, 3) - corner(0, 0));
  }

  Eigen::Vector2d on_ring(int sector, Place place) const
  {
    if (place.ring == 0)
      return Eigen::Vector2d::Zero();
    const double radius = disc_.rings[static_cast<std::size_t>(place.ring / 3 - 1)];
    const double angle =
        2.0 * std::numbers::pi / num_sectors * (sector + static_cast<double>(place.along) / place.ring);
    return {disc_.semi_x * radius * std::cos(angle), disc_.semi_y * radius * std::sin(angle)};
  }

  const Disc& disc_;
  std::map<std::pair<int, int>, int> index_;
};

} // namespace

ShellMesh disc_mesh(const Disc& disc)
{
  DiscBuilder builder(disc);
  EdgeGroup outline = {"outline", {}};
  const int num_rings = static_cast<int>(disc.rings.size());
  for (int sector = 0; sector < num_sectors; ++sector)
  {
    for (int ring = 0; ring < num_rings; ++ring)
      for (int j = 0; j <= ring; ++j)
      {
        const Place here = {3 * ring, 3 * j};
        const Place beyond = {3 * ring + 3, 3 * j + 3};
        builder.add_triangle(sector, {here, Place{3 * ring + 3, 3 * j}, beyond});
        if (j < ring)
          builder.add_triangle(sector, {here, beyond, Place{3 * ring, 3 * j + 3}});
      }
    for (int j = 0; j < num_rings; ++j)
    {
      const auto edge_node = [&](int step) { return builder.node(sector, {3 * num_rings, 3 * j + step}); };
      outline.edges.push_back({edge_node(0), edge_node(1), edge_node(2), edge_node(3)});
    }
  }
  builder.mesh.boundary.push_back(std::move(outline));
  return std::move(builder.mesh);
}

std::vector<double> rings_with_strip(int count, double strip)
{
  std::vector<double> rings;
  for (int i = 1; i <= count; ++i)
    rings.push_back((1.0 - strip) * i / count);
  rings.push_back(1.0);
  return rings;
}

} // namespace plate::validation
