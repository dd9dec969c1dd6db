// SPDX-License-Identifier: MPL-2.0
#include "load_places.h"

#include <plate/mesh/locate.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

namespace plate
{

namespace
{

/// Direction of an edge at one of its ends, a cubic through four nodes at thirds.
Eigen::Vector2d direction_at_end(const ShellMesh& mesh, const std::array<int, 4>& edge, bool last)
{
  const auto place = [&](std::size_t i)
  { return planform_place(mesh, static_cast<std::size_t>(edge[last ? 3 - i : i])); };
  const Eigen::Vector2d slope = -5.5 * place(0) + 9.0 * place(1) - 4.5 * place(2) + place(3);
  return (last ? -slope : slope).normalized();
}

} // namespace

bool is_hole(const EdgeGroup& group)
{
  return group.name.starts_with("hole");
}

std::vector<std::size_t> hole_nodes(const ShellMesh& mesh, int most)
{
  std::vector<std::size_t> nodes;
  for (const EdgeGroup& group : mesh.boundary)
  {
    if (!is_hole(group))
      continue;
    const std::size_t step = group.edges.size() / static_cast<std::size_t>(most) + 1;
    for (std::size_t i = 0; i < group.edges.size(); i += step)
      nodes.push_back(static_cast<std::size_t>(group.edges[i][0]));
  }
  return nodes;
}

std::optional<std::size_t> sharpest_corner(const ShellMesh& mesh)
{
  std::map<int, Eigen::Vector2d> leaving; // direction of the edge that begins at a node
  for (const EdgeGroup& group : mesh.boundary)
    if (!is_hole(group))
      for (const auto& edge : group.edges)
        leaving[edge[0]] = direction_at_end(mesh, edge, false);
  constexpr double least_turn = std::numbers::pi / 6.0;
  constexpr double alike = 1e-6; // corners of a rectangle turn by the same angle but for rounding
  double sharpest = least_turn;
  std::optional<std::size_t> corner;
  for (const EdgeGroup& group : mesh.boundary)
  {
    if (is_hole(group))
      continue;
    for (const auto& edge : group.edges)
    {
      const auto next = leaving.find(edge[3]);
      if (next == leaving.end())
        continue;
      const Eigen::Vector2d from = direction_at_end(mesh, edge, true);
      const Eigen::Vector2d& to = next->second;
      const double turn = std::atan2(from.x() * to.y() - from.y() * to.x(), from.dot(to));
      if (turn <= sharpest + alike)
        continue;
      sharpest = turn;
      corner = static_cast<std::size_t>(edge[3]);
    }
  }
  return corner;
}

std::size_t lower_end(const ShellMesh& mesh)
{
  // Of nodes as far out the one nearest to the centre line.
  constexpr double alike = 1e-6; // [m]
  const auto before = [&](const Eigen::Vector3d& a, const Eigen::Vector3d& b)
  {
    if (std::abs(a.x() - b.x()) > alike)
      return a.x() < b.x();
    return std::abs(a.y()) < std::abs(b.y());
  };
  std::size_t end = 0;
  for (std::size_t node = 1; node < mesh.nodes.size(); ++node)
    if (before(mesh.nodes[node], mesh.nodes[end]))
      end = node;
  return end;
}

std::optional<std::array<Eigen::Vector2d, 2>> finger_places(const ShellMesh& mesh,
                                                            const Eigen::Vector2d& centre_of_gravity)
{
  double low = mesh.nodes.front().x();
  double high = low;
  for (const Eigen::Vector3d& node : mesh.nodes)
  {
    low = std::min(low, node.x());
    high = std::max(high, node.x());
  }
  for (const double part : {0.25, 0.3, 0.2, 0.35, 0.15, 0.4, 0.1})
  {
    const Eigen::Vector2d step(part * (high - low), 0.0);
    const std::array<Eigen::Vector2d, 2> places = {centre_of_gravity - step, centre_of_gravity + step};
    if (locate(mesh, places[0]) && locate(mesh, places[1]))
      return places;
  }
  return std::nullopt;
}

Eigen::Vector2d planform_place(const ShellMesh& mesh, std::size_t node)
{
  return mesh.nodes[node].head<2>();
}

PlanformRegion disc(const Eigen::Vector2d& centre, double diameter)
{
  return EllipseRegion{.centre = centre, .axes = {diameter, diameter}};
}

} // namespace plate
