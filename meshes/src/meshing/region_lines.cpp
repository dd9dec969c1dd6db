// SPDX-License-Identifier: MPL-2.0
#include "region_lines.h"

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

using Eigen::Vector2d;

constexpr double clearance = 0.6; // from what is meshed already, over the edge length wanted there

struct Segment
{
  Vector2d a, b; // [m]
};

double distance(const Vector2d& p, const Segment& s)
{
  const Vector2d ab = s.b - s.a;
  const double t = std::clamp((p - s.a).dot(ab) / std::max(ab.squaredNorm(), 1e-300), 0.0, 1.0);
  return (p - (s.a + t * ab)).norm();
}

/// What the mesh has already: the polygons around the area to fill, then lines laid before.
class Obstacles
{
public:
  explicit Obstacles(const CornerMesh& mesh)
  {
    for (const std::vector<std::vector<int>>* loops : {&mesh.inner_loops, &mesh.bar_loops})
      for (const std::vector<int>& loop : *loops)
        for (std::size_t i = 0; i < loop.size(); ++i)
          polygons_.push_back({at(mesh, loop[i]), at(mesh, loop[(i + 1) % loop.size()])});
  }

  void add(const Vector2d& a, const Vector2d& b) { lines_.push_back({a, b}); }

  /// Whether a point lies in the area to fill (even-odd rule over all its polygons) and at a distance from all lines.
  [[nodiscard]] bool leaves_room(const Vector2d& p, double room) const
  {
    bool inside = false;
    for (const Segment& s : polygons_)
    {
      if ((s.a.y() > p.y()) != (s.b.y() > p.y()) &&
          p.x() < s.a.x() + (s.b.x() - s.a.x()) * (p.y() - s.a.y()) / (s.b.y() - s.a.y()))
        inside = !inside;
      if (distance(p, s) < room)
        return false;
    }
    return inside &&
           std::none_of(lines_.begin(), lines_.end(), [&](const Segment& s) { return distance(p, s) < room; });
  }

private:
  static const Vector2d& at(const CornerMesh& mesh, int node) { return mesh.nodes[static_cast<std::size_t>(node)]; }

  std::vector<Segment> polygons_;
  std::vector<Segment> lines_;
};

/// Points along a side of a region at about the edge length wanted there; the end of the side is left to the next one.
template <class SizeAt>
void divide(const std::vector<Vector2d>& side, const SizeAt& size_at_point, std::vector<Vector2d>& points)
{
  std::vector<double> edges = {0.0}; // wanted up to each point of the side
  for (std::size_t i = 0; i + 1 < side.size(); ++i)
    edges.push_back(edges.back() + (side[i + 1] - side[i]).norm() / size_at_point(0.5 * (side[i] + side[i + 1])));
  const int count = std::max(1, static_cast<int>(std::lround(edges.back())));
  std::size_t i = 0;
  for (int k = 0; k < count; ++k)
  {
    const double wanted = edges.back() * k / count;
    while (edges[i + 1] < wanted)
      ++i;
    points.emplace_back(side[i] + (wanted - edges[i]) / (edges[i + 1] - edges[i]) * (side[i + 1] - side[i]));
  }
}

/// Sides of a region as fine polylines: those of a polygon, the whole edge of an ellipse.
std::vector<std::vector<Vector2d>> sides_of(const PlanformRegion& region)
{
  std::vector<Vector2d> edge = edge_of(region);
  const std::size_t n = edge.size();
  edge.push_back(edge.front());
  if (std::holds_alternative<EllipseRegion>(region))
    return {edge};
  constexpr int pieces = 32;
  std::vector<std::vector<Vector2d>> sides(n);
  for (std::size_t i = 0; i < n; ++i)
    for (int k = 0; k <= pieces; ++k)
      sides[i].emplace_back(edge[i] + static_cast<double>(k) / pieces * (edge[i + 1] - edge[i]));
  return sides;
}

} // namespace

void add_region_lines(const std::vector<PlanformRegion>& regions, const std::vector<BoundarySample>& samples,
                      double size, CornerMesh& mesh)
{
  const auto wanted = [&](const Vector2d& p) { return size_at(samples, p, size); };
  Obstacles obstacles(mesh);
  for (const PlanformRegion& region : regions)
  {
    std::vector<Vector2d> points;
    for (const std::vector<Vector2d>& side : sides_of(region))
      divide(side, wanted, points);
    std::vector<bool> has_room(points.size());
    for (std::size_t i = 0; i < points.size(); ++i)
      has_room[i] = obstacles.leaves_room(points[i], clearance * wanted(points[i]));
    std::vector<int> nodes(points.size(), -1); // of the points that a line ends at
    const auto node_at = [&](std::size_t i)
    {
      if (nodes[i] < 0)
      {
        nodes[i] = static_cast<int>(mesh.nodes.size());
        mesh.nodes.push_back(points[i]);
      }
      return nodes[i];
    };
    for (std::size_t i = 0; i < points.size(); ++i)
    {
      const std::size_t next = (i + 1) % points.size();
      if (!has_room[i] || !has_room[next])
        continue;
      const int from = node_at(i);
      mesh.lines.push_back({from, node_at(next)});
      obstacles.add(points[i], points[next]);
    }
  }
}

} // namespace plate
