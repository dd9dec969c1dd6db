// SPDX-License-Identifier: MPL-2.0
#include <plate/elements/cubic_triangle.h>
#include <plate/elements/quartic_bubbles.h>
#include <plate/meshes/mesher.h>

#include <algorithm>
#include <array>
#include <variant>
#include <vector>

namespace plate
{

namespace
{

/// What the thickness has in each triangle beyond that interpolated from its nodes.
std::vector<std::array<double, QuarticBubbles::num_functions>> thickness_bubbles(const ShellMesh& shell,
                                                                                 const ThicknessField& thickness)
{
  const QuarticBubbles::Gradient places = QuarticBubbles::sample_points();
  std::vector<std::array<double, QuarticBubbles::num_functions>> bubbles;
  for (const auto& nodes : shell.triangles)
  {
    QuarticBubbles::Vector missing;
    for (int i = 0; i < QuarticBubbles::num_functions; ++i)
    {
      const CubicTriangle::Vector N = CubicTriangle::shape(places(i, 0), places(i, 1));
      Eigen::Vector2d point = Eigen::Vector2d::Zero();
      double interpolated = 0.0;
      for (std::size_t k = 0; k < nodes.size(); ++k)
      {
        const auto node = static_cast<std::size_t>(nodes[k]);
        point += N(static_cast<Eigen::Index>(k)) * shell.nodes[node].head<2>();
        interpolated += N(static_cast<Eigen::Index>(k)) * shell.thickness[node];
      }
      missing(i) = thickness.at(point) - interpolated;
    }
    const QuarticBubbles::Vector coefficients = QuarticBubbles::from_samples(missing);
    std::copy(coefficients.begin(), coefficients.end(), bubbles.emplace_back().begin());
  }
  return bubbles;
}

} // namespace

ShellMesh lift(const PlanformMesh& mesh, const PlateGeometry& geometry)
{
  const ArchSurface surface(geometry.outline, geometry.arching);
  const ThicknessField thickness(geometry.outline, geometry.thickness);
  ShellMesh shell;
  for (const Eigen::Vector2d& p : mesh.nodes)
  {
    const Height height = surface.at(p);
    shell.nodes.emplace_back(p.x(), p.y(), height.z);
    shell.normals.push_back(height.normal());
    shell.thickness.push_back(thickness.at(p));
  }
  shell.triangles = mesh.triangles;
  if (!std::holds_alternative<UniformThickness>(geometry.thickness))
    shell.thickness_bubbles = thickness_bubbles(shell, thickness);
  shell.boundary = mesh.boundary;
  shell.bars = mesh.bars;
  return shell;
}

} // namespace plate
