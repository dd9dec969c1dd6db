// SPDX-License-Identifier: MPL-2.0
#include <plate/design/build_body.h>

#include "body_blocks.h"
#include "body_cavity.h"
#include "body_ribs.h"

#include <plate/core/error.h>
#include <plate/design/build_model.h>
#include <plate/meshes/body_mesh.h>

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

/// Distance of the middle of the ribs from the rim of the plates.
double middle_of_ribs(const RibDesign& ribs)
{
  return ribs.overhang + 0.5 * total_thickness(ribs.laminate);
}

/// Top and back as they are meshed and built.
struct GluedPlates
{
  Design top;
  Design back;
};

GluedPlates glued_plates(const BodyDesign& design)
{
  GluedPlates out = {.top = design.top, .back = facing_back(design)};
  glue_end_blocks(design, out.top);
  glue_end_blocks(design, out.back);
  return out;
}

/// @param layout  of the ribs; null to choose it
/// @param joints  null to find them
BodyModel build_on(const BodyDesign& design, const BodyPlates& plates, double size, const RibLayout* layout,
                   const std::vector<std::vector<PartNode>>* joints)
{
  const GluedPlates glued = glued_plates(design);
  BodyModel out;
  out.plates = plates;
  out.size = size;
  std::vector<BodyPart>& parts = out.body.parts;
  parts.push_back({.name = "top", .model = in_vacuo(build_model(glued.top, plates.top))});
  parts.push_back({.name = "back", .model = in_vacuo(build_model(glued.back, plates.back))});
  add_bridge(design, parts[BodyModel::top].model);
  const auto top_line = rib_line(plates.top);
  const auto back_line = rib_line(plates.back);
  const double edges = 0.5 * (mean_edge_thickness(parts[BodyModel::top].model, top_line) +
                              mean_edge_thickness(parts[BodyModel::back].model, back_line));
  parts[BodyModel::back].placement = back_placement(design.ribs, outline_length(design.top.geometry.outline), edges);
  const auto below = facing_edges(parts[BodyModel::top].model, top_line, parts[BodyModel::back].model, back_line);
  const RibMeasures measures = {.size = size,
                                .lining = design.linings ? design.linings->height : 0.0,
                                .end_block = design.blocks.end.x(),
                                .corner_block = design.blocks.corner.x()};
  const std::vector<RibEdge> lower = placed(parts[BodyModel::back].model, parts[BodyModel::back].placement, below);
  const std::vector<RibEdge> upper = placed(parts[BodyModel::top].model, parts[BodyModel::top].placement, top_line);
  out.ribs = layout ? *layout : rib_layout(lower, upper, measures);
  for (RibPiece& piece : rib_meshes(lower, upper, measures, out.ribs))
  {
    if (piece.band == RibBand::end_block)
      out.end_blocks = end_blocks_on(parts.size(), piece.mesh);
    out.solids += backing_volume(piece, design);
    parts.push_back(rib_part(std::move(piece), design));
  }
  if (design.neck && out.end_blocks)
    out.body.masses.push_back(neck_on(*design.neck, *out.end_blocks));
  out.body.joints = joints ? *joints : nodes_at_one_place(parts);
  if (design.soundpost)
    out.body.struts.push_back(post_between(*design.soundpost));
  out.cavity = space_within(design, parts[BodyModel::back], back_line);
  out.holes = hole_outlines(design.top.geometry);
  return out;
}

void check_same_parts(const Body& from, const Body& to)
{
  const auto same = [](const BodyPart& a, const BodyPart& b)
  { return a.name == b.name && a.model.mesh.triangles == b.model.mesh.triangles; };
  if (!std::equal(from.parts.begin(), from.parts.end(), to.parts.begin(), to.parts.end(), same))
    throw InvalidInput(message("body: it has ", to.parts.size(), " parts that are not the same as the ",
                               from.parts.size(), " before; with other linings or blocks build it anew"));
}

} // namespace

BodyModel build_body(const BodyDesign& design)
{
  const double length = outline_length(design.top.geometry.outline);
  const double size = design.mesh_size > 0.0 ? design.mesh_size : length / sizes_along_body;
  const GluedPlates glued = glued_plates(design); // blocks have lines of the mesh along their footprints
  const BodyPlates plates =
      mesh_body_plates(glued.top.geometry, glued.back.geometry, middle_of_ribs(design.ribs), size);
  return build_on(design, plates, size, nullptr, nullptr);
}

BodyModel move_body(const BodyModel& from, const BodyDesign& changed, const MoveBodyOptions& options)
{
  const BodyPlates plates = options.keep_planforms
                                ? from.plates
                                : move_body_plates(from.plates, changed.top.geometry, facing_back(changed).geometry,
                                                   middle_of_ribs(changed.ribs));
  BodyModel moved = build_on(changed, plates, from.size, &from.ribs, &from.body.joints);
  check_same_parts(from.body, moved.body);
  return moved;
}

BodyAir body_air(const BodyModel& model, const BodyDesign& design)
{
  BodyAir out = {.cavity = model.cavity,
                 .holes = model.holes,
                 .sides = {},
                 .air = air_in({.temperature = design.air_temperature}),
                 .solids = model.solids};
  out.sides.assign(model.body.parts.size(), WallSide::ribs);
  out.sides[BodyModel::top] = WallSide::top;
  out.sides[BodyModel::back] = WallSide::back;
  return out;
}

} // namespace plate
