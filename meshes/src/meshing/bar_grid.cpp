// SPDX-License-Identifier: MPL-2.0
#include "bar_grid.h"

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

using Eigen::Vector2d;

bool has_inner_apex(const BarFootprintShape& bar) { return std::abs(bar.apex) < 0.49 * bar.length; }

// Shares 0 ... 1 of the way between two stations, denser where small edges are wanted.
std::vector<double> shares(const BarFootprintShape& bar, double from, double to,
                           const std::vector<BoundarySample>& samples, double size)
{
  constexpr int steps = 200;
  std::vector<double> passed{0.0}; // edges wanted up to each step
  for (int k = 0; k < steps; ++k)
  {
    const double along = from + (to - from) * (k + 0.5) / steps;
    const double wanted = std::min(size_at(samples, bar_point(bar, along, 0.5 * bar.width), size),
                                   size_at(samples, bar_point(bar, along, -0.5 * bar.width), size));
    passed.push_back(passed.back() + (to - from) / steps / wanted);
  }
  const int count = std::max(1, static_cast<int>(std::ceil(0.9 * passed.back())));
  std::vector<double> result;
  std::size_t k = 0;
  for (int i = 0; i < count; ++i)
  {
    const double target = passed.back() * i / count;
    while (passed[k + 1] <= target)
      ++k;
    result.push_back((static_cast<double>(k) + (target - passed[k]) / (passed[k + 1] - passed[k])) / steps);
  }
  result.push_back(1.0);
  return result;
}

} // namespace

BarRows place_bar_rows(const BarFootprintShape& bar, const std::vector<BoundarySample>& samples, double size)
{
  const double half = 0.5 * bar.length;
  if (!has_inner_apex(bar))
    return {.lower = shares(bar, -half, half, samples, size), .upper = {}};
  return {.lower = shares(bar, -half, bar.apex, samples, size), .upper = shares(bar, bar.apex, half, samples, size)};
}

void add_bar(const BarFootprintShape& bar, const BarRows& rows, CornerMesh& mesh)
{
  const double half = 0.5 * bar.length;
  const double middle = rows.upper.empty() ? half : bar.apex;
  std::vector<double> stations;
  for (const double share : rows.lower)
    stations.push_back(-half + share * (middle + half));
  for (std::size_t i = 1; i < rows.upper.size(); ++i)
    stations.push_back(middle + rows.upper[i] * (half - middle));

  const int first = static_cast<int>(mesh.nodes.size());
  for (const double along : stations)
    for (const double across : {-0.5 * bar.width, 0.0, 0.5 * bar.width})
      mesh.nodes.push_back(bar_point(bar, along, across));
  const int num_rows = static_cast<int>(stations.size());
  const auto node = [first](int row, int column) { return first + 3 * row + column; };
  const auto add = [&mesh](int a, int b, int c)
  {
    mesh.bar_triangles.push_back(static_cast<int>(mesh.triangles.size()));
    mesh.triangles.push_back({a, b, c});
  };
  for (int r = 0; r + 1 < num_rows; ++r)
  {
    // Diagonals away from the centre line on both sides.
    add(node(r, 0), node(r + 1, 1), node(r, 1));
    add(node(r, 0), node(r + 1, 0), node(r + 1, 1));
    add(node(r, 1), node(r + 1, 1), node(r, 2));
    add(node(r, 2), node(r + 1, 1), node(r + 1, 2));
  }

  // Clockwise, as seen from the plate around it.
  std::vector<int> loop;
  for (int r = 0; r + 1 < num_rows; ++r)
    loop.push_back(node(r, 2));
  loop.push_back(node(num_rows - 1, 2));
  loop.push_back(node(num_rows - 1, 1));
  for (int r = num_rows - 1; r > 0; --r)
    loop.push_back(node(r, 0));
  loop.push_back(node(0, 0));
  loop.push_back(node(0, 1));
  mesh.bar_loops.push_back(std::move(loop));
}

BarFootprint bar_footprint(const BarFootprintShape& bar, const PlanformMesh& mesh, const std::vector<int>& triangles)
{
  const Vector2d axis = bar_axis(bar);
  BarFootprint footprint{.triangles = triangles,
                         .station = std::vector<double>(mesh.nodes.size(), 0.0),
                         .axis = {axis.x(), axis.y(), 0.0}};
  for (const int t : triangles)
    for (const int n : mesh.triangles[static_cast<std::size_t>(t)])
    {
      const auto node = static_cast<std::size_t>(n);
      footprint.station[node] = (mesh.nodes[node] - bar_point(bar, 0.0, 0.0)).dot(axis);
    }
  return footprint;
}

} // namespace plate
