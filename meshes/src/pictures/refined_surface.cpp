// SPDX-License-Identifier: MPL-2.0
#include "refined_surface.h"

#include <plate/core/error.h>
#include <plate/elements/cubic_triangle.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <unordered_map>

namespace plate
{

namespace
{

std::uint64_t pair_key(int a, int b)
{
  const auto [low, high] = std::minmax(a, b);
  return (static_cast<std::uint64_t>(low) << 32U) | static_cast<std::uint64_t>(high);
}

/// Numbers the points of the refined surface; points on a corner or edge are shared by all triangles there.
class PointNumbers
{
public:
  PointNumbers(RefinedSurface& surface) : surface_(surface) {}

  /// Point number of each lattice point (i, j) of a triangle, row by row in j.
  std::vector<int> lattice(int triangle)
  {
    const int n = surface_.divisions;
    std::vector<int> ids;
    for (int j = 0; j <= n; ++j)
      for (int i = 0; i + j <= n; ++i)
        ids.push_back(lattice_point(triangle, i, j));
    return ids;
  }

private:
  int lattice_point(int triangle, int i, int j)
  {
    const int n = surface_.divisions;
    const auto& nodes = surface_.mesh.triangles[static_cast<std::size_t>(triangle)];
    const std::array<int, 3> steps = {n - i - j, i, j}; // towards corners 0, 1, 2
    for (std::size_t c = 0; c < 3; ++c)
      if (steps[c] == n)
        return shared(corners_, static_cast<std::uint64_t>(nodes[c]), triangle, i, j);
    for (std::size_t c = 0; c < 3; ++c)
    {
      const std::size_t next = (c + 1) % 3;
      if (steps[3 - c - next] != 0)
        continue;
      const int from_low = nodes[c] < nodes[next] ? steps[next] : steps[c];
      auto& along = edge_points_[pair_key(nodes[c], nodes[next])];
      if (along.empty())
        along.assign(static_cast<std::size_t>(n + 1), -1);
      int& id = along[static_cast<std::size_t>(from_low)];
      if (id < 0)
        id = add(triangle, i, j);
      return id;
    }
    return add(triangle, i, j);
  }

  int shared(std::unordered_map<std::uint64_t, int>& known, std::uint64_t key, int triangle, int i, int j)
  {
    const auto found = known.find(key);
    if (found != known.end())
      return found->second;
    const int id = add(triangle, i, j);
    known.emplace(key, id);
    return id;
  }

  int add(int triangle, int i, int j)
  {
    const Eigen::Vector2d rs(static_cast<double>(i) / surface_.divisions, static_cast<double>(j) / surface_.divisions);
    surface_.sites.push_back({.triangle = triangle, .rs = rs});
    surface_.points.push_back(surface_.place(triangle, rs));
    return static_cast<int>(surface_.points.size()) - 1;
  }

  RefinedSurface& surface_;
  std::unordered_map<std::uint64_t, int> corners_;
  std::unordered_map<std::uint64_t, std::vector<int>> edge_points_;
};

/// Corners (i, j) of the small triangles of one triangle, counter-clockwise.
std::vector<std::array<std::array<int, 2>, 3>> lattice_triangles(int n)
{
  std::vector<std::array<std::array<int, 2>, 3>> triangles;
  for (int j = 0; j < n; ++j)
    for (int i = 0; i + j < n; ++i)
    {
      triangles.push_back({{{i, j}, {i + 1, j}, {i, j + 1}}});
      if (i + j + 1 < n)
        triangles.push_back({{{i + 1, j}, {i + 1, j + 1}, {i, j + 1}}});
    }
  return triangles;
}

/// Numbers the edges and finds those with a triangle on one side only.
void find_edges(RefinedSurface& surface)
{
  std::unordered_map<std::uint64_t, int> numbers;
  std::vector<int> uses;
  numbers.reserve(2 * surface.triangles.size());
  for (const auto& triangle : surface.triangles)
  {
    std::array<int, 3> edges{};
    for (std::size_t k = 0; k < 3; ++k)
    {
      const auto [entry, is_new] =
          numbers.try_emplace(pair_key(triangle[k], triangle[(k + 1) % 3]), static_cast<int>(uses.size()));
      if (is_new)
        uses.push_back(0);
      ++uses[static_cast<std::size_t>(entry->second)];
      edges[k] = entry->second;
    }
    surface.edges.push_back(edges);
  }
  for (std::size_t t = 0; t < surface.triangles.size(); ++t)
    for (std::size_t k = 0; k < 3; ++k)
      if (uses[static_cast<std::size_t>(surface.edges[t][k])] == 1)
        surface.boundary.push_back({.from = surface.triangles[t][k],
                                    .to = surface.triangles[t][(k + 1) % 3],
                                    .edge = surface.edges[t][k],
                                    .triangle = static_cast<int>(t),
                                    .side = static_cast<int>(k)});
}

/// Node at (i, j) thirds of a cubic triangle, rows of j.
constexpr std::array<std::array<std::size_t, 4>, 4> lattice_nodes = {
    {{0, 3, 4, 1}, {8, 9, 5, 0}, {7, 6, 0, 0}, {2, 0, 0, 0}}};

struct Range
{
  double low = std::numeric_limits<double>::infinity();
  double high = -std::numeric_limits<double>::infinity();
};

/// Least and greatest value at the nodes of the third-sized triangle around a place: three of them inside it, two on
/// its sides, one at its corners, so that both triangles of a side agree.
Range range_of_nearest_nodes(const ShellMesh& mesh, std::span<const double> nodal, const RefinedSurface::Site& site)
{
  constexpr double rounding = 1e-9;
  const double u = 3.0 * site.rs[0];
  const double v = 3.0 * site.rs[1];
  const auto i = static_cast<std::size_t>(std::clamp(u + rounding, 0.0, 3.0));
  const auto j = static_cast<std::size_t>(std::clamp(v + rounding, 0.0, 3.0));
  const double part_u = u - static_cast<double>(i);
  const double part_v = v - static_cast<double>(j);
  Range range;
  const auto include = [&](double share, std::size_t column, std::size_t row)
  {
    if (share < rounding)
      return;
    const auto& nodes = mesh.triangles[static_cast<std::size_t>(site.triangle)];
    const double value = nodal[static_cast<std::size_t>(nodes[lattice_nodes[row][column]])];
    range.low = std::min(range.low, value);
    range.high = std::max(range.high, value);
  };
  // Shares of the corners in linear interpolation; those without a share do not count.
  include(1.0 - part_u - part_v, i, j);
  include(part_u + part_v > 1.0 ? 1.0 - part_v : part_u, i + 1, j);
  include(part_u + part_v > 1.0 ? 1.0 - part_u : part_v, i, j + 1);
  include(part_u + part_v - 1.0, i + 1, j + 1);
  return range;
}

void check_mesh(const ShellMesh& mesh)
{
  if (mesh.nodes.empty() || mesh.triangles.empty())
    throw InvalidInput("picture: the mesh is empty; make a mesh first");
  const int num_nodes = static_cast<int>(mesh.nodes.size());
  for (const auto& triangle : mesh.triangles)
    for (const int node : triangle)
      if (node < 0 || node >= num_nodes)
        throw InvalidInput(message("picture: a triangle uses node ", node, ", the mesh has ", num_nodes, " nodes"));
}

} // namespace

double RefinedSurface::value(std::span<const double> nodal, int mesh_triangle, const Eigen::Vector2d& rs) const
{
  const CubicTriangle::Vector weights = CubicTriangle::shape(rs[0], rs[1]);
  const auto& nodes = mesh.triangles[static_cast<std::size_t>(mesh_triangle)];
  double sum = 0.0;
  for (std::size_t k = 0; k < nodes.size(); ++k)
    sum += weights[static_cast<Eigen::Index>(k)] * nodal[static_cast<std::size_t>(nodes[k])];
  return sum;
}

Eigen::Vector2d RefinedSurface::place(int mesh_triangle, const Eigen::Vector2d& rs) const
{
  const CubicTriangle::Vector weights = CubicTriangle::shape(rs[0], rs[1]);
  const auto& nodes = mesh.triangles[static_cast<std::size_t>(mesh_triangle)];
  Eigen::Vector2d sum = Eigen::Vector2d::Zero();
  for (std::size_t k = 0; k < nodes.size(); ++k)
    sum += weights[static_cast<Eigen::Index>(k)] * mesh.nodes[static_cast<std::size_t>(nodes[k])].head<2>();
  return sum;
}

RefinedSurface refine(const ShellMesh& mesh, int divisions)
{
  check_mesh(mesh);
  RefinedSurface surface{.mesh = mesh, .divisions = divisions};
  const auto small = lattice_triangles(divisions);
  const auto row_start = [divisions](int j) { return j * (divisions + 1) - j * (j - 1) / 2; };
  for (const auto& corners : small)
  {
    std::array<Eigen::Vector2d, 3> rs;
    for (std::size_t c = 0; c < 3; ++c)
      rs[c] = Eigen::Vector2d(corners[c][0], corners[c][1]) / divisions;
    surface.pattern.push_back(rs);
  }
  PointNumbers numbers(surface);
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
  {
    const std::vector<int> ids = numbers.lattice(static_cast<int>(t));
    for (const auto& corners : small)
    {
      std::array<int, 3> triangle{};
      for (std::size_t c = 0; c < 3; ++c)
        triangle[c] = ids[static_cast<std::size_t>(row_start(corners[c][1]) + corners[c][0])];
      surface.triangles.push_back(triangle);
    }
  }
  find_edges(surface);
  return surface;
}

int drawing_divisions(const ShellMesh& mesh, int pieces)
{
  check_mesh(mesh);
  Eigen::Vector3d low = mesh.nodes.front();
  Eigen::Vector3d high = low;
  for (const Eigen::Vector3d& node : mesh.nodes)
  {
    low = low.cwiseMin(node);
    high = high.cwiseMax(node);
  }
  double sum = 0.0; // [m]
  for (const auto& t : mesh.triangles)
    sum += (mesh.nodes[static_cast<std::size_t>(t[0])] - mesh.nodes[static_cast<std::size_t>(t[1])]).norm();
  const double mean_edge = sum / static_cast<double>(mesh.triangles.size()); // [m]
  const double wanted = mean_edge / ((high - low).maxCoeff() / pieces);
  return 3 * std::clamp(static_cast<int>(std::lround(wanted / 3.0)), 1, 6);
}

std::vector<double> sample(const RefinedSurface& surface, std::span<const double> nodal, Interpolation interpolation)
{
  std::vector<double> values;
  values.reserve(surface.sites.size());
  for (const RefinedSurface::Site& site : surface.sites)
  {
    double value = surface.value(nodal, site.triangle, site.rs);
    if (interpolation == Interpolation::within_nodes)
    {
      const auto [low, high] = range_of_nearest_nodes(surface.mesh, nodal, site);
      value = std::clamp(value, low, high);
    }
    values.push_back(value);
  }
  return values;
}

} // namespace plate
