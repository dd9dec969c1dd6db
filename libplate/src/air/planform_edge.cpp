// SPDX-License-Identifier: MPL-2.0
#include "planform_edge.h"

#include <plate/core/error.h>

#include <Eigen/Geometry>

#include <algorithm>
#include <limits>

namespace plate
{

PlanformEdge::PlanformEdge(const ShellMesh& planform) : planform_(planform)
{
  for (const EdgeGroup& group : planform.boundary)
    for (const auto& edge : group.edges)
      for (std::size_t i = 0; i + 1 < edge.size(); ++i)
        pieces_.push_back({edge[i], edge[i + 1]});
  if (pieces_.empty())
    throw InvalidInput("cavity: ribs need a planform with its edges in `boundary`; it has none");
  Eigen::AlignedBox2d extent;
  for (const auto& piece : pieces_)
    extent.extend(planform.nodes[static_cast<std::size_t>(piece[0])].head<2>().eval());
  reach_ = 0.1 * extent.diagonal().norm();
}

CavitySpace::EdgePlace PlanformEdge::nearest(const Eigen::Vector2d& point) const
{
  CavitySpace::EdgePlace place = {};
  double least = std::numeric_limits<double>::infinity();
  for (const auto& piece : pieces_)
  {
    const Eigen::Vector2d from = planform_.nodes[static_cast<std::size_t>(piece[0])].head<2>();
    const Eigen::Vector2d along = planform_.nodes[static_cast<std::size_t>(piece[1])].head<2>() - from;
    const double t = std::clamp((point - from).dot(along) / along.squaredNorm(), 0.0, 1.0);
    const double distance = (from + t * along - point).norm();
    if (distance < least)
    {
      least = distance;
      place = {.nodes = piece, .share = t};
    }
  }
  if (!(least <= reach_))
    throw InvalidInput(message("wall_flow: a rib passes x = ", point.x(), " m, y = ", point.y(), " m, ", least,
                               " m from the edge of the cavity; give both in the axes of the body"));
  return place;
}

} // namespace plate
