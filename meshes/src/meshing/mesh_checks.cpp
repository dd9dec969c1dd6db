// SPDX-License-Identifier: MPL-2.0
#include "mesh_checks.h"

#include <plate/core/error.h>
#include <plate/elements/cubic_triangle.h>
#include <plate/elements/quadrature.h>

#include <Eigen/LU>

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

namespace plate
{

namespace
{

using Eigen::Vector2d;
using TriangleNodes = Eigen::Matrix<double, 2, CubicTriangle::num_nodes>;

TriangleNodes nodes_of(const PlanformMesh& mesh, std::size_t triangle)
{
  TriangleNodes x;
  for (int i = 0; i < CubicTriangle::num_nodes; ++i)
    x.col(i) = mesh.nodes[static_cast<std::size_t>(mesh.triangles[triangle][static_cast<std::size_t>(i)])];
  return x;
}

struct Jacobians
{
  double least, greatest; // determinant, at quadrature points and nodes [m^2]
  double area;            // [m^2]
};

Jacobians jacobians(const TriangleNodes& x)
{
  static const CubicTriangle::Gradient at_nodes = CubicTriangle::node_coordinates();
  Jacobians result{.least = HUGE_VAL, .greatest = -HUGE_VAL, .area = 0.0};
  const auto visit = [&](double xi, double eta)
  {
    const double det = (x * CubicTriangle::gradient(xi, eta)).determinant();
    result.least = std::min(result.least, det);
    result.greatest = std::max(result.greatest, det);
    return det;
  };
  for (const TrianglePoint& p : triangle_points())
    result.area += p.weight * visit(p.xi, p.eta);
  for (Eigen::Index i = 0; i < at_nodes.rows(); ++i)
    visit(at_nodes(i, 0), at_nodes(i, 1));
  return result;
}

double least_angle(const TriangleNodes& x)
{
  double least = std::numbers::pi;
  for (int i = 0; i < 3; ++i)
  {
    const Vector2d u = x.col((i + 1) % 3) - x.col(i);
    const Vector2d v = x.col((i + 2) % 3) - x.col(i);
    least = std::min(least, std::atan2(u.x() * v.y() - u.y() * v.x(), u.dot(v)));
  }
  return least;
}

// Closed chains of edges that belong to one triangle only.
std::size_t count_boundary_loops(const PlanformMesh& mesh)
{
  std::map<std::pair<int, int>, int> uses;
  for (const auto& t : mesh.triangles)
    for (std::size_t i = 0; i < 3; ++i)
      ++uses[std::minmax(t[i], t[(i + 1) % 3])];
  std::map<int, int> next; // the boundary runs with its triangle
  for (const auto& t : mesh.triangles)
    for (std::size_t i = 0; i < 3; ++i)
      if (uses.at(std::minmax(t[i], t[(i + 1) % 3])) == 1)
        next[t[i]] = t[(i + 1) % 3];
  std::size_t loops = 0;
  while (!next.empty())
  {
    ++loops;
    for (auto at = next.begin(); at != next.end();)
    {
      const int to = at->second;
      next.erase(at);
      at = next.find(to);
    }
  }
  return loops;
}

void check_jacobians(const PlanformMesh& mesh)
{
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
  {
    const TriangleNodes x = nodes_of(mesh, t);
    if (jacobians(x).least > 0.0)
      continue;
    const Vector2d where = x.leftCols(3).rowwise().mean() * 1e3;
    throw NumericalFailure(message("mesh: triangle ", t + 1, " at x = ", where.x(), ", y = ", where.y(),
                                   " mm is inside out; mesh anew, or with another size"));
  }
}

} // namespace

MeshQuality mesh_quality(const PlanformMesh& mesh)
{
  MeshQuality quality{.least_jacobian = HUGE_VAL,
                      .least_angle = HUGE_VAL,
                      .shortest_edge = HUGE_VAL,
                      .longest_edge = 0.0,
                      .area = 0.0,
                      .num_nodes = static_cast<int>(mesh.nodes.size()),
                      .num_triangles = static_cast<int>(mesh.triangles.size())};
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
  {
    const TriangleNodes x = nodes_of(mesh, t);
    const Jacobians j = jacobians(x);
    quality.least_jacobian = std::min(quality.least_jacobian, j.least / std::abs(j.greatest));
    quality.area += j.area;
    quality.least_angle = std::min(quality.least_angle, least_angle(x));
    for (int i = 0; i < 3; ++i)
    {
      const double edge = (x.col((i + 1) % 3) - x.col(i)).norm();
      quality.shortest_edge = std::min(quality.shortest_edge, edge);
      quality.longest_edge = std::max(quality.longest_edge, edge);
    }
  }
  return quality;
}

std::vector<FinerPlace> inside_out_places(const PlanformMesh& mesh)
{
  std::vector<FinerPlace> places;
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
  {
    const TriangleNodes x = nodes_of(mesh, t);
    if (jacobians(x).least > 0.0)
      continue;
    double longest = 0.0;
    for (int i = 0; i < 3; ++i)
      longest = std::max(longest, (x.col((i + 1) % 3) - x.col(i)).norm());
    places.push_back({x.leftCols(3).rowwise().mean(), longest});
  }
  return places;
}

void check_mesh(const PlanformMesh& mesh, const PlateGeometry& geometry)
{
  std::vector<bool> used(mesh.nodes.size(), false);
  for (const auto& triangle : mesh.triangles)
    for (const int node : triangle)
      used[static_cast<std::size_t>(node)] = true;
  if (const auto orphans = std::count(used.begin(), used.end(), false); orphans > 0)
    throw NumericalFailure(message("mesh: ", orphans, " nodes belong to no triangle; try another mesh size"));

  check_jacobians(mesh);

  const std::size_t loops = count_boundary_loops(mesh);
  const std::size_t wanted = boundary_of(geometry).loops.size();
  if (loops != wanted)
    throw NumericalFailure(message("mesh: ", loops, " boundary loops instead of ", wanted, "; try another mesh size"));

  // Cubic edges of at most 50 degrees miss a circle's area by 1e-6 of it; a coarse mesh of tight curves by more.
  constexpr double tolerance = 1e-4;
  const double area = mesh_quality(mesh).area;
  const double exact = planform_area(geometry);
  if (!(std::abs(area - exact) < tolerance * exact))
    throw NumericalFailure(
        message("mesh: area ", area * 1e6, " mm2 instead of ", exact * 1e6, " mm2; try a smaller mesh size"));
}

} // namespace plate
