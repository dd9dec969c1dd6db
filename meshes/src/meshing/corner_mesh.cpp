// SPDX-License-Identifier: MPL-2.0
#include "corner_mesh.h"

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

using Eigen::Vector2d;

double smallest_angle(const Vector2d& a, const Vector2d& b, const Vector2d& c)
{
  const auto angle = [](const Vector2d& at, const Vector2d& p, const Vector2d& q)
  {
    const Vector2d u = p - at, v = q - at;
    return std::abs(std::atan2(u.x() * v.y() - u.y() * v.x(), u.dot(v)));
  };
  return std::min({angle(a, b, c), angle(b, c, a), angle(c, a, b)});
}

// A corner of a strip cell: its node and its place in the cell.
struct CellCorner
{
  int node;
  double u, depth;
};

class StripBuilder
{
public:
  explicit StripBuilder(CornerMesh& mesh) : mesh_(mesh) {}

  void add_cell(const StripCell& cell, int b0, int b1, int i0, int i1)
  {
    cell_ = mesh_.cells.size();
    mesh_.cells.push_back(cell);
    const CellCorner B0{b0, 0.0, 0.0}, B1{b1, 1.0, 0.0}, I0{i0, 0.0, 1.0}, I1{i1, 1.0, 1.0};
    if (i0 == b0 && i1 == b1)
      add_edge(B0, B1); // no strip: the boundary edge alone
    else if (i0 == b0)
      add_triangle(B0, B1, I1);
    else if (i1 == b1)
      add_triangle(B0, B1, I0);
    else
      add_quadrilateral(B0, B1, I1, I0);
  }

private:
  const Vector2d& at(const CellCorner& c) const { return mesh_.nodes[static_cast<std::size_t>(c.node)]; }

  // Along the diagonal that leaves the greater least angle. Both diagonals are noted: a moved mesh keeps its triangles.
  void add_quadrilateral(const CellCorner& a, const CellCorner& b, const CellCorner& c, const CellCorner& d)
  {
    add_edge(a, c);
    add_edge(b, d);
    const double ac = std::min(smallest_angle(at(a), at(b), at(c)), smallest_angle(at(a), at(c), at(d)));
    const double bd = std::min(smallest_angle(at(a), at(b), at(d)), smallest_angle(at(b), at(c), at(d)));
    if (ac >= bd - 1e-9)
    {
      add_triangle(a, b, c);
      add_triangle(a, c, d);
      return;
    }
    add_triangle(a, b, d);
    add_triangle(b, c, d);
  }

  void add_triangle(const CellCorner& a, const CellCorner& b, const CellCorner& c)
  {
    mesh_.triangles.push_back({a.node, b.node, c.node});
    add_edge(a, b);
    add_edge(b, c);
    add_edge(c, a);
  }

  void add_edge(const CellCorner& a, const CellCorner& b)
  {
    const CellCorner& first = a.node < b.node ? a : b;
    const CellCorner& second = a.node < b.node ? b : a;
    mesh_.curved.insert_or_assign({first.node, second.node},
                                  StripEdge{cell_, first.u, first.depth, second.u, second.depth});
  }

  CornerMesh& mesh_;
  std::size_t cell_ = 0;
};

// A vector in the frame (left, tangent) of a curve point, and back.
Vector2d into_frame(const Vector2d& v, const CurvePoint& p) { return {v.dot(p.left()), v.dot(p.tangent())}; }
Vector2d out_of_frame(const Vector2d& v, const CurvePoint& p) { return v.x() * p.left() + v.y() * p.tangent(); }

} // namespace

Vector2d StripCell::at(double u, double depth) const
{
  const CurvePoint p = evaluate(*piece, t0 + (t1 - t0) * u);
  return p.position + depth * out_of_frame((1.0 - u) * inner0 + u * inner1, p);
}

CornerMesh strip_mesh(const std::vector<std::vector<BoundaryStation>>& stations,
                      const std::vector<std::vector<BoundaryNode>>& nodes, const PlateBoundary& boundary)
{
  CornerMesh mesh;
  std::vector<std::vector<int>> outer(stations.size());
  for (std::size_t l = 0; l < stations.size(); ++l)
    for (const BoundaryNode& node : nodes[l])
    {
      outer[l].push_back(static_cast<int>(mesh.nodes.size()));
      mesh.nodes.push_back(node.position);
    }
  mesh.inner_loops = outer;
  for (std::size_t l = 0; l < stations.size(); ++l)
    for (std::size_t i = 0; i < stations[l].size(); ++i)
      if (stations[l][i].strip_share > 0.0)
      {
        mesh.inner_loops[l][i] = static_cast<int>(mesh.nodes.size());
        mesh.nodes.emplace_back(nodes[l][i].position + nodes[l][i].offset);
      }

  StripBuilder builder(mesh);
  mesh.loop_edges.resize(stations.size());
  for (std::size_t l = 0; l < stations.size(); ++l)
  {
    const std::size_t n = stations[l].size();
    for (std::size_t i = 0; i < n; ++i)
    {
      const std::size_t j = (i + 1) % n;
      const BoundaryStation& s = stations[l][i];
      const BoundaryStation& next = stations[l][j];
      const CurvePiece& piece = boundary.loops[l].pieces[static_cast<std::size_t>(s.piece)];
      const double t1 = next.piece == s.piece && next.t > s.t ? next.t : 1.0;
      StripCell cell{.piece = &piece,
                     .t0 = s.t,
                     .t1 = t1,
                     .inner0 = into_frame(nodes[l][i].offset, evaluate(piece, s.t)),
                     .inner1 = into_frame(nodes[l][j].offset, evaluate(piece, t1))};
      // Where the strip ends its depth goes to zero; the width must not fall too, or the tip would have no angle.
      if (cell.inner0.isZero(0.0))
        cell.inner0 = cell.inner1;
      else if (cell.inner1.isZero(0.0))
        cell.inner1 = cell.inner0;
      builder.add_cell(cell, outer[l][i], outer[l][j], mesh.inner_loops[l][i], mesh.inner_loops[l][j]);
      mesh.loop_edges[l].push_back({outer[l][i], outer[l][j]});
    }
  }
  return mesh;
}

void raise_to_cubic(const CornerMesh& corners, PlanformMesh& mesh)
{
  mesh.nodes = corners.nodes;
  mesh.num_corners = static_cast<int>(corners.nodes.size());
  mesh.triangles.clear();
  std::map<std::pair<int, int>, int> edge_nodes; // first of the two nodes on an edge, walking from the smaller corner
  const auto nodes_of_edge = [&](int a, int b)
  {
    const std::pair<int, int> key = std::minmax(a, b);
    const auto [found, is_new] = edge_nodes.try_emplace(key, static_cast<int>(mesh.nodes.size()));
    if (is_new)
    {
      const auto curved = corners.curved.find(key);
      const Vector2d& p = corners.nodes[static_cast<std::size_t>(key.first)];
      const Vector2d& q = corners.nodes[static_cast<std::size_t>(key.second)];
      for (const double s : {1.0 / 3.0, 2.0 / 3.0})
      {
        if (curved == corners.curved.end())
        {
          mesh.nodes.emplace_back((1.0 - s) * p + s * q);
          continue;
        }
        const StripEdge& e = curved->second;
        mesh.nodes.push_back(
            corners.cells[e.cell].at((1.0 - s) * e.u0 + s * e.u1, (1.0 - s) * e.depth0 + s * e.depth1));
      }
    }
    const int first = found->second;
    return a < b ? std::array<int, 2>{first, first + 1} : std::array<int, 2>{first + 1, first};
  };

  for (const auto& [a, b, c] : corners.triangles)
  {
    const auto ab = nodes_of_edge(a, b);
    const auto bc = nodes_of_edge(b, c);
    const auto ca = nodes_of_edge(c, a);
    const auto at = [&](int node) -> Vector2d { return mesh.nodes[static_cast<std::size_t>(node)]; };
    // The centre of a triangle whose edges are bent: complete to the second order.
    const Vector2d edges = at(ab[0]) + at(ab[1]) + at(bc[0]) + at(bc[1]) + at(ca[0]) + at(ca[1]);
    const Vector2d centre = edges / 4.0 - (at(a) + at(b) + at(c)) / 6.0;
    mesh.triangles.push_back({a, b, c, ab[0], ab[1], bc[0], bc[1], ca[0], ca[1], static_cast<int>(mesh.nodes.size())});
    mesh.nodes.push_back(centre);
  }
  for (std::size_t l = 0; l < corners.loop_edges.size(); ++l)
    for (std::size_t i = 0; i < corners.loop_edges[l].size(); ++i)
    {
      const auto [a, b] = corners.loop_edges[l][i];
      const auto inner = nodes_of_edge(a, b);
      mesh.boundary[l].edges.push_back({a, inner[0], inner[1], b});
    }
}

} // namespace plate
