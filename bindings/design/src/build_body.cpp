// SPDX-License-Identifier: MPL-2.0
#include <plate/design/build_body.h>

#include "body_blocks.h"
#include "body_cavity.h"

#include <plate/core/error.h>
#include <plate/design/build_model.h>
#include <plate/meshes/body_mesh.h>
#include <plate/post/surface_integral.h>

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <utility>
#include <variant>

namespace plate
{

namespace
{

using Eigen::Vector2d;
using Eigen::Vector3d;

// Default edge length: that part of the body's length. On a viola of wood the lowest ten modes are within 1.5 % of
// those at a third of it, the most under the soundpost, the others within 0.7 %.
constexpr double sizes_along_body = 18.0;

double mean_edge_thickness(const Model& plate, const std::vector<std::array<int, 4>>& line)
{
  double sum = 0.0;
  for (const auto& edge : line)
    sum += plate.mesh.thickness[static_cast<std::size_t>(edge[0])];
  return sum / static_cast<double>(line.size());
}

/// Back below the top, tilted where the ribs are lower at the neck.
///
/// @param edges  half the thickness of both edges together [m]
Eigen::Isometry3d back_placement(const RibDesign& ribs, double length, double edges)
{
  const double slope = (ribs.height - ribs.neck_height) / length;
  Eigen::Isometry3d placement = Eigen::Isometry3d::Identity();
  placement.linear() = Eigen::AngleAxisd(-std::atan(slope), Vector3d::UnitY()).toRotationMatrix() *
                       Vector3d(1.0, -1.0, -1.0).asDiagonal();
  placement.translation().z() = -0.5 * (ribs.height + ribs.neck_height) - edges;
  return placement;
}

/// Edges of the back below those of the top, in the order of the top's.
std::vector<std::array<int, 4>> facing_edges(const Model& top, const std::vector<std::array<int, 4>>& top_line,
                                             const Model& back, const std::vector<std::array<int, 4>>& back_line)
{
  constexpr double tolerance = 1e-5; // [m]
  const auto mirrored = [&](int node)
  {
    const Vector3d& at = back.mesh.nodes[static_cast<std::size_t>(node)];
    return Vector2d(at.x(), -at.y());
  };
  std::vector<std::array<int, 4>> out;
  for (const auto& edge : top_line)
  {
    const auto away = [&](const std::array<int, 4>& other)
    {
      double most = 0.0;
      for (std::size_t k = 0; k < 4; ++k)
        most = std::max(most,
                        (mirrored(other[3 - k]) - top.mesh.nodes[static_cast<std::size_t>(edge[k])].head<2>()).norm());
      return most;
    };
    const auto facing = std::min_element(back_line.begin(), back_line.end(),
                                         [&](const auto& a, const auto& b) { return away(a) < away(b); });
    if (away(*facing) > tolerance)
      throw NumericalFailure(message("body: edges of top and back are ", away(*facing) * 1e3,
                                     " mm apart in planform; try another mesh.size"));
    out.push_back({(*facing)[3], (*facing)[2], (*facing)[1], (*facing)[0]});
  }
  return out;
}

std::vector<RibEdge> placed(const Model& plate, const Eigen::Isometry3d& placement,
                            const std::vector<std::array<int, 4>>& line)
{
  std::vector<RibEdge> edges;
  for (const auto& edge : line)
  {
    RibEdge& out = edges.emplace_back();
    for (std::size_t k = 0; k < 4; ++k)
      out[k] = placement * plate.mesh.nodes[static_cast<std::size_t>(edge[k])];
  }
  return edges;
}

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

/// Volume of what backs the ribs of a piece [m3].
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

/// Ribs have z for their reference axis, which is tangent to them all round.
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

Model in_vacuo(Model model)
{
  model.air_density = 0.0;
  return model;
}

/// A vertical post; its feet have the same place in the planform.
Strut post_between(const PostDesign& post)
{
  const auto foot = [&](const Vector2d& at)
  { return EllipseRegion{.centre = at, .axes = Vector2d::Constant(post.diameter)}; };
  const OrthotropicElastic& wood = post.material.elastic;
  return {.feet = {StrutFoot{.part = BodyModel::top, .region = foot(post.at)},
                   StrutFoot{.part = BodyModel::back, .region = foot({post.at.x(), -post.at.y()})}},
          .E = wood.E1,
          .G = 0.5 * (wood.G12 + wood.G13),
          .density = post.material.density,
          .diameter = post.diameter};
}

/// Half of the bridge on either foot.
void add_bridge(const BodyDesign& design, Model& top)
{
  for (const double side : {-0.5, 0.5})
    top.masses.push_back(
        {.at = {design.top.setup.bridge_x, side * design.top.setup.bridge_feet}, .mass = 0.5 * design.bridge_mass});
}

/// The back with an outline that faces the top's. Two measured outlines of one body differ by what measuring leaves:
/// the back takes the mirror image of the top's.
Design facing_back(const BodyDesign& design)
{
  constexpr double most = 0.02; // difference in length or width that may still be one body [-]
  Design back = design.back;
  const auto* top_outline = std::get_if<CurveOutline>(&design.top.geometry.outline);
  const auto* back_outline = std::get_if<CurveOutline>(&back.geometry.outline);
  if (top_outline == nullptr || back_outline == nullptr)
    return back;
  if (std::abs(back_outline->length / top_outline->length - 1.0) > most ||
      std::abs(back_outline->width / top_outline->width - 1.0) > most)
    throw InvalidInput(message("body: the measured outlines of top and back are ", top_outline->length * 1e3, " x ",
                               top_outline->width * 1e3, " and ", back_outline->length * 1e3, " x ",
                               back_outline->width * 1e3, " mm; those of one body differ by at most 2 %"));
  back.geometry.outline = curve_outline(mirrored(top_outline->loop));
  return back;
}

EndBlocks end_blocks_on(std::size_t part, const ShellMesh& blocks)
{
  EndBlocks out = {.part = part, .neck = {}, .lower = {}};
  for (std::size_t i = 0; i < blocks.nodes.size(); ++i)
    (blocks.nodes[i].x() > 0.0 ? out.neck : out.lower).push_back(static_cast<int>(i));
  return out;
}

/// The neck on the nodes of the block at its end.
FixedMass neck_on(const NeckDesign& neck, const EndBlocks& blocks)
{
  const double turning = neck.mass * neck.length * neck.length / 12.0;
  return {.part = blocks.part,
          .nodes = blocks.neck,
          .mass = neck.mass,
          .centre = {neck.centre.x(), 0.0, neck.centre.y()},
          .inertia = Vector3d(0.0, turning, turning).asDiagonal()};
}

} // namespace

BodyModel build_body(const BodyDesign& design)
{
  const double length = outline_length(design.top.geometry.outline);
  const double size = design.mesh_size > 0.0 ? design.mesh_size : length / sizes_along_body;
  const double to_middle = design.ribs.overhang + 0.5 * total_thickness(design.ribs.laminate);
  Design top = design.top;
  Design back = facing_back(design);
  glue_end_blocks(design, top);
  glue_end_blocks(design, back);
  const BodyPlates plates = mesh_body_plates(top.geometry, back.geometry, to_middle, size);
  BodyModel out;
  std::vector<BodyPart>& parts = out.body.parts;
  parts.push_back({.name = "top", .model = in_vacuo(build_model(top, plates.top))});
  parts.push_back({.name = "back", .model = in_vacuo(build_model(back, plates.back))});
  add_bridge(design, parts[BodyModel::top].model);
  const auto top_line = rib_line(plates.top);
  const auto back_line = rib_line(plates.back);
  const double edges = 0.5 * (mean_edge_thickness(parts[BodyModel::top].model, top_line) +
                              mean_edge_thickness(parts[BodyModel::back].model, back_line));
  parts[BodyModel::back].placement = back_placement(design.ribs, length, edges);
  const auto below = facing_edges(parts[BodyModel::top].model, top_line, parts[BodyModel::back].model, back_line);
  const RibMeasures measures = {.size = size,
                                .lining = design.linings ? design.linings->height : 0.0,
                                .end_block = design.blocks.end.x(),
                                .corner_block = design.blocks.corner.x()};
  for (RibPiece& piece :
       rib_meshes(placed(parts[BodyModel::back].model, parts[BodyModel::back].placement, below),
                  placed(parts[BodyModel::top].model, parts[BodyModel::top].placement, top_line), measures))
  {
    if (piece.band == RibBand::end_block)
      out.end_blocks = end_blocks_on(parts.size(), piece.mesh);
    out.solids += backing_volume(piece, design);
    parts.push_back(rib_part(std::move(piece), design));
  }
  if (design.neck && out.end_blocks)
    out.body.masses.push_back(neck_on(*design.neck, *out.end_blocks));
  out.body.joints = nodes_at_one_place(parts);
  if (design.soundpost)
    out.body.struts.push_back(post_between(*design.soundpost));
  out.cavity = space_within(design, parts[BodyModel::back], back_line);
  out.holes = hole_outlines(design.top.geometry);
  return out;
}

} // namespace plate
