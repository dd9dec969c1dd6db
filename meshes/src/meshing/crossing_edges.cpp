// SPDX-License-Identifier: MPL-2.0
#include "crossing_edges.h"

#include "exact_predicates.h"

#include <algorithm>
#include <cstddef>

namespace plate
{
namespace
{

using Eigen::Vector2d;

struct Edge
{
  int from, to;  // nodes
  Vector2d a, b; // [m]

  [[nodiscard]] double left() const { return std::min(a.x(), b.x()); }
  [[nodiscard]] double right() const { return std::max(a.x(), b.x()); }
  [[nodiscard]] double length() const { return (b - a).norm(); }
};

std::vector<Edge> edges_of(const CornerMesh& mesh)
{
  std::vector<Edge> edges;
  for (const auto* loops : {&mesh.inner_loops, &mesh.bar_loops})
    for (const std::vector<int>& loop : *loops)
      for (std::size_t i = 0; i < loop.size(); ++i)
      {
        const int from = loop[i], to = loop[(i + 1) % loop.size()];
        edges.push_back(
            {from, to, mesh.nodes[static_cast<std::size_t>(from)], mesh.nodes[static_cast<std::size_t>(to)]});
      }
  return edges;
}

// Neighbours share a node and may fold back on each other only.
bool collide(const Edge& e, const Edge& f)
{
  if (e.to == f.from)
    return orientation(e.a, e.b, f.b) == 0 && (e.a - e.b).dot(f.b - e.b) > 0.0;
  if (f.to == e.from)
    return collide(f, e);
  return meeting(e.a, e.b, f.a, f.b) != Meeting::none;
}

} // namespace

std::vector<FinerPlace> crossing_edges(const CornerMesh& mesh)
{
  std::vector<Edge> edges = edges_of(mesh);
  std::sort(edges.begin(), edges.end(), [](const Edge& e, const Edge& f) { return e.left() < f.left(); });
  std::vector<FinerPlace> places;
  for (std::size_t i = 0; i < edges.size(); ++i)
    for (std::size_t j = i + 1; j < edges.size() && edges[j].left() <= edges[i].right(); ++j)
      if (collide(edges[i], edges[j]))
        for (const Edge* e : {&edges[i], &edges[j]})
          places.push_back({0.5 * (e->a + e->b), e->length()});
  return places;
}

} // namespace plate
