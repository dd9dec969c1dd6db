// SPDX-License-Identifier: MPL-2.0
#include "pressure_space.h"

#include <plate/core/error.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <utility>

namespace plate
{

namespace
{

using Corners = std::array<int, 3>;

/// Where panels at an edge are cut, from the edge to the vertex behind it. Between, the root is taken as straight.
constexpr std::array<double, 2> cuts = {0.0625, 0.375};

/// Vertices along a side that leads from a vertex on an edge to one behind it, both included.
using Spoke = std::array<int, cuts.size() + 2>;

class Builder
{
public:
  explicit Builder(const PanelMesh& panels) : on_edge_(edge_vertices(panels))
  {
    if (std::find(on_edge_.begin(), on_edge_.end(), true) == on_edge_.end())
      throw InvalidInput("air_mass: the surface is closed; the mass of the air is that of a plate with edges");
    space_.panels.vertices = panels.vertices;
    for (const bool edge : on_edge_)
    {
      space_.unknown.push_back(edge ? PressureSpace::none : space_.num_unknowns++);
      space_.factor.push_back(1.0);
    }
    for (const Corners& corners : panels.triangles)
      add(corners);
  }

  PressureSpace take() { return std::move(space_); }

private:
  [[nodiscard]] bool on_edge(int vertex) const { return on_edge_[static_cast<std::size_t>(vertex)]; }

  const Spoke& spoke(int edge, int inner)
  {
    const auto [found, is_new] = spokes_.try_emplace({edge, inner});
    Spoke& spoke = found->second;
    if (!is_new)
      return spoke;
    spoke.front() = edge;
    spoke.back() = inner;
    const Eigen::Vector3d from = space_.panels.vertices[static_cast<std::size_t>(edge)];
    const Eigen::Vector3d to = space_.panels.vertices[static_cast<std::size_t>(inner)];
    for (std::size_t i = 0; i < cuts.size(); ++i)
    {
      spoke[i + 1] = static_cast<int>(space_.panels.vertices.size());
      space_.panels.vertices.emplace_back(from + cuts[i] * (to - from));
      space_.unknown.push_back(space_.unknown[static_cast<std::size_t>(inner)]);
      space_.factor.push_back(std::sqrt(cuts[i]));
    }
    return spoke;
  }

  void add(const Corners& corners)
  {
    const auto num_on_edge = std::count_if(corners.begin(), corners.end(), [&](int vertex) { return on_edge(vertex); });
    if (num_on_edge == 0 || num_on_edge == 3)
    {
      space_.panels.triangles.push_back(corners);
      return;
    }
    // The corner unlike the other two comes first.
    std::size_t first = 0;
    while (on_edge(corners[first]) != (num_on_edge == 1))
      ++first;
    const int apex = corners[first];
    const int second = corners[(first + 1) % 3];
    const int third = corners[(first + 2) % 3];
    Spoke left = num_on_edge == 1 ? spoke(apex, second) : spoke(second, apex);
    Spoke right = num_on_edge == 1 ? spoke(apex, third) : spoke(third, apex);
    if (num_on_edge == 2)
    {
      std::reverse(left.begin(), left.end());
      std::reverse(right.begin(), right.end());
    }
    space_.panels.triangles.push_back({apex, left[1], right[1]});
    for (std::size_t i = 1; i + 1 < left.size(); ++i)
    {
      space_.panels.triangles.push_back({left[i], left[i + 1], right[i + 1]});
      space_.panels.triangles.push_back({left[i], right[i + 1], right[i]});
    }
  }

  std::vector<bool> on_edge_;
  PressureSpace space_;
  std::map<std::pair<int, int>, Spoke> spokes_;
};

} // namespace

PressureSpace pressure_space(const PanelMesh& panels)
{
  return Builder(panels).take();
}

} // namespace plate
