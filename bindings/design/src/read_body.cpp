// SPDX-License-Identifier: MPL-2.0
#include "read_body.h"

#include "body_checks.h"
#include "read_layup.h"
#include "read_load.h"
#include "read_materials.h"
#include "usual_sizes.h"

#include <plate/core/error.h>
#include <plate/meshes/outline.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>
#include <utility>

namespace plate
{
namespace
{

/// What makers take unless a body's file says otherwise, for the usual lengths: heights and overhang common practice,
/// the rest from memory, no source. Lengths in m, masses in kg.
struct UsualBody
{
  double rib_height, rib_thickness, overhang;
  double lining_height, lining_thickness;
  Eigen::Vector2d end_block, corner_block;
  double bridge_mass;
};

UsualBody usual_body(double length)
{
  const UsualBody violin = {.rib_height = 30e-3,
                            .rib_thickness = 1.0e-3,
                            .overhang = 2.3e-3,
                            .lining_height = 7e-3,
                            .lining_thickness = 2e-3,
                            .end_block = {46e-3, 14e-3},
                            .corner_block = {22e-3, 5e-3},
                            .bridge_mass = 2.2e-3};
  const UsualBody viola = {.rib_height = 38e-3,
                           .rib_thickness = 1.2e-3,
                           .overhang = 2.5e-3,
                           .lining_height = 8e-3,
                           .lining_thickness = 2e-3,
                           .end_block = {52e-3, 16e-3},
                           .corner_block = {24e-3, 6e-3},
                           .bridge_mass = 3.0e-3};
  const UsualBody cello = {.rib_height = 115e-3,
                           .rib_thickness = 1.5e-3,
                           .overhang = 3.5e-3,
                           .lining_height = 12e-3,
                           .lining_thickness = 3e-3,
                           .end_block = {90e-3, 26e-3},
                           .corner_block = {45e-3, 10e-3},
                           .bridge_mass = 11e-3};
  return usual_by_length(length, violin, viola, cello);
}

constexpr std::array<std::string_view, 7> body_tables = {"body", "ribs", "linings", "blocks", "bridge", "neck", "air"};
constexpr std::array<std::string_view, 7> shared_tables = {"title",    "material",   "strings", "soundpost",
                                                           "handling", "knock_down", "mesh"};

bool is_one_of(std::string_view name, auto& names)
{
  return std::find(names.begin(), names.end(), name) != names.end();
}

void check_body_tables(const TableReader& root)
{
  for (const std::string& name : root.names())
    if (!is_one_of(name, body_tables) && !is_one_of(name, shared_tables))
      root.table(name).fail_here("is no table of a body's file, which has body, ribs, linings, blocks, "
                                 "soundpost, bridge, neck, strings, handling, knock_down, air, material and mesh");
}

Laminate rib_laminate(const TableReader& table, const MaterialStock& stock, const UsualBody& usual)
{
  if (!table.has("plies"))
    return {.plies = {{.material = stock.named_by(table, "material", "maple").material,
                       .thickness = table.optional_number("thickness").value_or(usual.rib_thickness)}}};
  for (const char* key : {"thickness", "material"})
    if (table.has(key))
      table.fail(key, "contradicts ribs.plies, which give both; leave one of them out");
  return read_ply_list(table, stock);
}

RibDesign read_ribs(const TableReader& table, const MaterialStock& stock, const UsualBody& usual)
{
  RibDesign ribs = {.height = table.optional_number("height").value_or(usual.rib_height),
                    .neck_height = 0.0,
                    .overhang = table.optional_number("overhang").value_or(usual.overhang),
                    .laminate = rib_laminate(table, stock, usual)};
  ribs.neck_height = table.optional_number("neck_height").value_or(ribs.height);
  const auto positive = [&](const char* key, double value)
  {
    if (!(value > 0.0))
      table.fail(key, "must be greater than 0");
  };
  positive("height", ribs.height);
  positive("neck_height", ribs.neck_height);
  positive("overhang", ribs.overhang);
  positive("thickness", total_thickness(ribs.laminate));
  return ribs;
}

std::optional<LiningDesign> read_linings(const TableReader& table, const MaterialStock& stock, const UsualBody& usual,
                                         const RibDesign& ribs)
{
  const LiningDesign linings = {.height = table.optional_number("height").value_or(usual.lining_height),
                                .thickness = table.optional_number("thickness").value_or(usual.lining_thickness),
                                .material = stock.named_by(table, "material", "spruce").material};
  if (linings.height == 0.0 || linings.thickness == 0.0)
    return std::nullopt;
  if (const double low = std::min(ribs.height, ribs.neck_height); linings.height > 0.45 * low)
  {
    const std::string what = message("linings ", linings.height * 1e3, " mm high leave too little of ribs ", low * 1e3,
                                     " mm high; at most 0.45 of that");
    if (table.has("height"))
      table.fail("height", what);
    table.fail_here(what);
  }
  return linings;
}

Eigen::Vector2d pair_of(const TableReader& table, const char* key, const Eigen::Vector2d& usual)
{
  if (!table.has(key))
    return usual;
  const std::vector<double> given = table.numbers(key);
  if (given[0] > 0.0 && !(given[1] > 0.0))
    table.fail(key, "a block has a depth; make both numbers positive, or the first 0 for none");
  return {given[0], given[1]};
}

std::optional<PostDesign> read_post(const TableReader& table, const MaterialStock& stock, const Design& top)
{
  if (!table.exists())
    return std::nullopt;
  if (table.has("length"))
    table.fail("length", "follows from ribs and arches in a body; leave it out");
  const std::vector<double> at = table.numbers("at");
  const PostDesign post = {.at = {at[0], at[1]},
                           .diameter = table.number("diameter"),
                           .material = stock.named_by(table, "material", "spruce").material};
  if (!PlanformCover(top.geometry).contains(post.at))
    table.fail("at", "lies beside the top or in a hole");
  return post;
}

std::optional<NeckDesign> read_neck(const TableReader& table, const BlockDesign& blocks)
{
  if (!table.exists())
    return std::nullopt;
  if (blocks.end.x() == 0.0)
    table.fail_here("the neck is fixed to the block at its end, and blocks.end has none; give the block a width");
  const std::vector<double> centre = table.numbers("centre");
  return NeckDesign{.mass = table.number("mass"), .centre = {centre[0], centre[1]}, .length = table.number("length")};
}

/// A plate of a body is held by the body alone.
void check_free(const TableReader& root, const char* which, const Design& plate)
{
  if (!plate.supports.empty())
    root.table("body").fail(which, "the plate has a [support]; in a body its edge is glued to the ribs: leave it out");
}

} // namespace

void check_plate_tables(const TableReader& root)
{
  for (const std::string& name : root.names())
    if (is_one_of(name, body_tables))
      root.table(name).fail_here("is a table of a body's file, and this is read as the file of a plate");
}

BodyDesign read_body(const TableReader& root, const std::string& title, Design top, Design back)
{
  check_body_tables(root);
  check_free(root, "top", top);
  check_free(root, "back", back);
  const double length = outline_length(top.geometry.outline);
  const UsualBody usual = usual_body(length);
  const MaterialStock stock(root, Surroundings{});
  RibDesign ribs = read_ribs(root.table("ribs"), stock, usual);
  std::optional<LiningDesign> linings = read_linings(root.table("linings"), stock, usual, ribs);
  const TableReader block_table = root.table("blocks");
  BlockDesign blocks = {.end = pair_of(block_table, "end", usual.end_block),
                        .corner = pair_of(block_table, "corner", usual.corner_block),
                        .material = stock.named_by(block_table, "material", "spruce").material};
  const std::optional<NeckDesign> neck = read_neck(root.table("neck"), blocks);
  std::optional<PostDesign> post = read_post(root.table("soundpost"), stock, top);
  const Strings strings = read_strings(root, top);
  const double mesh_size = root.table("mesh").optional_number("size").value_or(0.0);
  if (mesh_size > 0.25 * outline_width(top.geometry.outline))
    root.table("mesh").fail("size", message("coarser than a quarter of the body's width, ",
                                            0.25e3 * outline_width(top.geometry.outline), " mm"));
  BodyDesign body = {.title = title,
                     .top = std::move(top),
                     .back = std::move(back),
                     .ribs = std::move(ribs),
                     .linings = std::move(linings),
                     .blocks = std::move(blocks),
                     .soundpost = std::move(post),
                     .bridge_mass = root.table("bridge").optional_number("mass").value_or(usual.bridge_mass),
                     .neck = neck,
                     .strings = strings,
                     .air_temperature = root.table("air").number("temperature"),
                     .mesh_size = mesh_size};
  check_body_parts(root, body);
  return body;
}

} // namespace plate
