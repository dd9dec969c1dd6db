// SPDX-License-Identifier: MPL-2.0
// Edge collapse onto one of the ends, cheapest edge first.
#include "panel_mesh.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <limits>
#include <queue>
#include <set>
#include <tuple>
#include <utility>

namespace plate
{

namespace
{

using Corners = std::array<int, 3>;

constexpr double least_quality = 0.3;   // of the triangles after a collapse, or theirs before it if that is less
constexpr double most_growth = 2.0;     // of the wanted size from the edge inward, per size at the edge
constexpr double greatest_turn = 0.5;   // least cosine between normals before and after
constexpr double edge_deviation = 0.03; // of a removed edge vertex from the new edge, per length of that edge
constexpr double edge_size = 0.1;       // panel size at the edge that the wanted sizes start from, per plate size

/// 1 for an equilateral triangle, 0 for a flat one; @param twice_area of it.
double quality(const std::array<Eigen::Vector3d, 3>& p, double twice_area)
{
  const double sides = (p[1] - p[0]).squaredNorm() + (p[2] - p[1]).squaredNorm() + (p[0] - p[2]).squaredNorm();
  return 2.0 * std::sqrt(3.0) * twice_area / sides;
}

bool contains(const Corners& t, int vertex)
{
  return t[0] == vertex || t[1] == vertex || t[2] == vertex;
}

class Coarsening
{
public:
  explicit Coarsening(PanelMesh panels) : panels_(std::move(panels)), on_edge_(edge_vertices(panels_))
  {
    around_.resize(panels_.vertices.size());
    alive_.assign(panels_.triangles.size(), true);
    num_alive_ = panels_.triangles.size();
    for (std::size_t t = 0; t < panels_.triangles.size(); ++t)
      for (const int vertex : panels_.triangles[t])
        ring(vertex).push_back(t);
    set_sizes();
    for (std::size_t v = 0; v < around_.size(); ++v)
      for (const int neighbour : neighbours(static_cast<int>(v)))
        if (neighbour > static_cast<int>(v))
          offer(static_cast<int>(v), neighbour);
  }

  void reduce_to(std::size_t most)
  {
    while (num_alive_ > most && !queue_.empty())
    {
      const auto [cost, a, b] = queue_.top();
      queue_.pop();
      if (!neighbours(a).contains(b)) // collapsed meanwhile
        continue;
      const double keep_a = quality_after(b, a);
      const double keep_b = quality_after(a, b);
      if (std::max(keep_a, keep_b) < 0.0)
        continue;
      if (keep_a > keep_b)
        collapse(b, a);
      else
        collapse(a, b);
    }
  }

  [[nodiscard]] PanelMesh result() const
  {
    PanelMesh out;
    std::vector<int> index(panels_.vertices.size(), -1);
    for (std::size_t v = 0; v < around_.size(); ++v)
      if (!around_[v].empty())
      {
        index[v] = static_cast<int>(out.vertices.size());
        out.vertices.push_back(panels_.vertices[v]);
      }
    for (std::size_t t = 0; t < alive_.size(); ++t)
      if (alive_[t])
      {
        const Corners& c = panels_.triangles[t];
        const auto at = [&](std::size_t i) { return index[static_cast<std::size_t>(c[i])]; };
        out.triangles.push_back({at(0), at(1), at(2)});
      }
    return out;
  }

private:
  std::vector<std::size_t>& ring(int vertex) { return around_[static_cast<std::size_t>(vertex)]; }
  [[nodiscard]] const std::vector<std::size_t>& ring(int vertex) const
  {
    return around_[static_cast<std::size_t>(vertex)];
  }
  [[nodiscard]] const Eigen::Vector3d& at(int vertex) const
  {
    return panels_.vertices[static_cast<std::size_t>(vertex)];
  }
  [[nodiscard]] bool on_edge(int vertex) const { return on_edge_[static_cast<std::size_t>(vertex)]; }

  [[nodiscard]] std::set<int> neighbours(int vertex) const
  {
    std::set<int> out;
    for (const std::size_t t : ring(vertex))
      out.insert(panels_.triangles[t].begin(), panels_.triangles[t].end());
    out.erase(vertex);
    return out;
  }

  [[nodiscard]] std::size_t num_shared(int a, int b) const
  {
    const auto holds_b = [&](std::size_t t) { return contains(panels_.triangles[t], b); };
    return static_cast<std::size_t>(std::count_if(ring(a).begin(), ring(a).end(), holds_b));
  }

  /// Wanted size of panels at each vertex, up to a common factor.
  void set_sizes()
  {
    Eigen::AlignedBox3d box;
    std::vector<int> edge;
    for (std::size_t v = 0; v < around_.size(); ++v)
    {
      box.extend(panels_.vertices[v]);
      if (on_edge_[v])
        edge.push_back(static_cast<int>(v));
    }
    const double least = edge_size * box.diagonal().norm();
    for (const Eigen::Vector3d& vertex : panels_.vertices)
    {
      double squared = std::numeric_limits<double>::infinity();
      for (const int other : edge)
        squared = std::min(squared, (at(other) - vertex).squaredNorm());
      size_.push_back(least + std::min(std::sqrt(squared), most_growth * least));
    }
  }

  void offer(int a, int b)
  {
    const double size = size_[static_cast<std::size_t>(a)] + size_[static_cast<std::size_t>(b)];
    queue_.emplace((at(a) - at(b)).norm() / size, std::min(a, b), std::max(a, b));
  }

  /// Whether the edge of the plate keeps its course when one of its vertices moves to a neighbour.
  [[nodiscard]] bool edge_allows(int gone, int kept) const
  {
    if (!on_edge(gone))
      return true;
    if (!on_edge(kept) || num_shared(gone, kept) != 1)
      return false;
    for (const int other : neighbours(gone))
      if (other != kept && on_edge(other) && num_shared(gone, other) == 1)
      {
        const Eigen::Vector3d chord = at(other) - at(kept);
        const double beside = (at(gone) - at(kept)).cross(chord).norm() / chord.squaredNorm();
        if (beside > edge_deviation)
          return false;
      }
    return true;
  }

  /// Least quality of the triangles left when one vertex moves to a neighbour; negative where that is not possible.
  [[nodiscard]] double quality_after(int gone, int kept) const
  {
    constexpr double impossible = -1.0;
    const std::set<int> a = neighbours(gone);
    const std::set<int> b = neighbours(kept);
    const auto common =
        static_cast<std::size_t>(std::count_if(a.begin(), a.end(), [&](int vertex) { return b.contains(vertex); }));
    if (common != num_shared(gone, kept) || !edge_allows(gone, kept))
      return impossible;
    double least_before = least_quality;
    double least_after = 1.0;
    for (const std::size_t t : ring(gone))
    {
      const Corners& corners = panels_.triangles[t];
      std::array<Eigen::Vector3d, 3> p;
      std::array<Eigen::Vector3d, 3> q;
      for (std::size_t i = 0; i < 3; ++i)
      {
        p[i] = at(corners[i]);
        q[i] = at(corners[i] == gone ? kept : corners[i]);
      }
      const Eigen::Vector3d before = (p[1] - p[0]).cross(p[2] - p[0]);
      least_before = std::min(least_before, quality(p, before.norm()));
      if (contains(corners, kept)) // goes
        continue;
      const Eigen::Vector3d after = (q[1] - q[0]).cross(q[2] - q[0]);
      if (before.dot(after) < greatest_turn * before.norm() * after.norm())
        return impossible;
      least_after = std::min(least_after, quality(q, after.norm()));
    }
    return least_after < least_before ? impossible : least_after;
  }

  void collapse(int gone, int kept)
  {
    for (const std::size_t t : ring(gone))
    {
      Corners& corners = panels_.triangles[t];
      if (contains(corners, kept))
      {
        alive_[t] = false;
        --num_alive_;
        for (const int vertex : corners)
          if (vertex != gone)
            std::erase(ring(vertex), t);
        continue;
      }
      std::replace(corners.begin(), corners.end(), gone, kept);
      ring(kept).push_back(t);
    }
    ring(gone).clear();
    for (const int neighbour : neighbours(kept))
      offer(kept, neighbour);
  }

  using Candidate = std::tuple<double, int, int>; // cost, two vertices

  PanelMesh panels_;
  std::vector<bool> on_edge_;
  std::vector<std::vector<std::size_t>> around_; // triangles at each vertex
  std::vector<bool> alive_;
  std::size_t num_alive_ = 0;
  std::vector<double> size_;
  std::priority_queue<Candidate, std::vector<Candidate>, std::greater<>> queue_;
};

} // namespace

PanelMesh coarsened(const PanelMesh& fine, std::size_t most)
{
  if (fine.triangles.size() <= most)
    return fine;
  Coarsening coarsening(fine);
  coarsening.reduce_to(most);
  return coarsening.result();
}

} // namespace plate
