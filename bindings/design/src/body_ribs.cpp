// SPDX-License-Identifier: MPL-2.0
#include "body_ribs.h"

#include <plate/core/error.h>
#include <plate/post/surface_integral.h>

#include <algorithm>
#include <array>
#include <utility>

namespace plate
{

namespace
{

using Eigen::Vector2d;
using Eigen::Vector3d;

/// Least radius to which a wall is bent, from its normals at neighbouring nodes along the edges of its triangles [m].
double least_radius(const ShellMesh& mesh)
{
  constexpr std::array<std::size_t, 10> round = {0, 3, 4, 1, 5, 6, 2, 7, 8, 0};
  double most = 1e-9; // curvature [1/m]
  for (const auto& t : mesh.triangles)
    for (std::size_t k = 0; k + 1 < round.size(); ++k)
    {
      const auto a = static_cast<std::size_t>(t[round[k]]);
      const auto b = static_cast<std::size_t>(t[round[k + 1]]);
      most = std::max(most, (mesh.normals[a] - mesh.normals[b]).norm() / (mesh.nodes[a] - mesh.nodes[b]).norm());
    }
  return 1.0 / most;
}

/// A layer inside all of a wall. A shell holds no layer that is thick beside its radius: what is too thick becomes
/// thinner and denser, so that its mass stays.
///
/// @param mass_share  factor on its mass [-]
Patch backing(Material material, double thickness, Angle angle, const ShellMesh& wall, double mass_share)
{
  constexpr double share_of_radius = 0.25;
  constexpr double everywhere = 100.0; // [m]
  const double depth = std::min(thickness, share_of_radius * least_radius(wall));
  material.density *= mass_share * thickness / depth;
  return {.side = PlateSide::inside,
          .region = EllipseRegion{.centre = Vector2d::Zero(), .axes = Vector2d::Constant(everywhere)},
          .laminate = {.plies = {{.material = material, .thickness = depth, .angle = angle}}}};
}

} // namespace

double backing_volume(const RibPiece& piece, const BodyDesign& design)
{
  const double area = nodal_areas(piece.mesh).sum();
  switch (piece.band)
  {
  case RibBand::lining:
    return area * design.linings->thickness;
  case RibBand::end_block:
    return area * piece.backing_share * design.blocks.end.y();
  case RibBand::corner_block:
    return area * piece.backing_share * design.blocks.corner.y();
  case RibBand::plain:
    break;
  }
  return 0.0;
}

BodyPart rib_part(RibPiece piece, const BodyDesign& design)
{
  const Angle along = Angle::degrees(-90.0);
  Laminate laminate = design.ribs.laminate;
  for (Ply& ply : laminate.plies)
    ply.angle = Angle::radians(ply.angle.in_radians() + along.in_radians());
  BodyPart part = {.name = "ribs", .model = {}};
  part.model.mesh = std::move(piece.mesh);
  std::fill(part.model.mesh.thickness.begin(), part.model.mesh.thickness.end(), total_thickness(laminate));
  part.model.material = {.laminate = std::move(laminate), .axes = {.axis = Vector3d::UnitZ(), .up = Vector3d::UnitX()}};
  if (piece.band == RibBand::plain)
    return part;
  if (piece.band == RibBand::lining)
  {
    part.name = "linings";
    part.model.patches = {backing(design.linings->material, design.linings->thickness, along, part.model.mesh, 1.0)};
    return part;
  }
  part.name = "blocks";
  const Vector2d& block = piece.band == RibBand::end_block ? design.blocks.end : design.blocks.corner;
  part.model.patches = {
      backing(design.blocks.material, block.y(), Angle::degrees(0.0), part.model.mesh, piece.backing_share)};
  return part;
}

} // namespace plate
