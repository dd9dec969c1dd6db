// SPDX-License-Identifier: MPL-2.0
#include "read_load.h"

#include "usual_sizes.h"

#include <plate/core/error.h>
#include <plate/meshes/outline.h>
#include <plate/meshes/plate_geometry.h>

#include <cmath>
#include <numbers>
#include <numeric>

namespace plate
{
namespace
{

/// Of all strings by the length of the body [N]; common practice: sets of medium tension.
double usual_tension(double length)
{
  constexpr int num_strings = 4;
  return num_strings * usual_by_length(length, 55.0, 57.0, 140.0);
}

void check_on_plate(const TableReader& table, const char* key, const PlanformCover& cover, const Eigen::Vector2d& at)
{
  if (!cover.contains(at))
    table.fail(key, message("x = ", at.x() * 1e3, ", y = ", at.y() * 1e3, " mm lies beside the plate or in a hole"));
}

std::optional<Soundpost> read_soundpost(const TableReader& root, const MaterialStock& stock, const Design& design,
                                        const PlanformCover& cover)
{
  const TableReader table = root.table("soundpost");
  if (!table.exists())
    return std::nullopt;
  const std::vector<double> at = table.numbers("at");
  const Eigen::Vector2d place(at[0], at[1]);
  check_on_plate(table, "at", cover, place);
  const double diameter = table.number("diameter");
  const double length = table.optional_number("length").value_or(0.13 * outline_length(design.geometry.outline));
  const StockMaterial& wood = stock.named_by(table, "material", "spruce");
  const double area = 0.25 * std::numbers::pi * diameter * diameter;
  return Soundpost{.at = place, .diameter = diameter, .stiffness = wood.material.elastic.E1 * area / length};
}

HandlingForces read_handling(const TableReader& root, const Design& design, const PlanformCover& cover)
{
  const TableReader table = root.table("handling");
  HandlingForces handling = {.thumb = table.number("thumb"),
                             .thumb_at = {},
                             .knock = table.number("knock"),
                             .lift = table.number("lift"),
                             .squeeze = table.number("squeeze")};
  handling.thumb_at = {-0.3 * outline_length(design.geometry.outline), 0.0};
  if (table.has("thumb_at"))
  {
    const std::vector<double> at = table.numbers("thumb_at");
    handling.thumb_at = {at[0], at[1]};
  }
  check_on_plate(table, "thumb_at", cover, handling.thumb_at);
  return handling;
}

KnockDowns read_knock_downs(const TableReader& root)
{
  const TableReader table = root.table("knock_down");
  return {.hand_layup = table.number("hand_layup"),
          .hole_edge = table.number("hole_edge"),
          .hot_wet = table.number("hot_wet"),
          .sustained_laminate = table.number("sustained_laminate"),
          .sustained_wood = table.number("sustained_wood")};
}

} // namespace

Strings read_strings(const TableReader& root, const Design& design)
{
  const TableReader table = root.table("strings");
  Strings strings = {.tension = usual_tension(outline_length(design.geometry.outline)),
                     .angle = Angle::radians(table.number("angle")),
                     .foot = design.setup.bridge_feet * Eigen::Vector2d(0.13, 0.3)};
  if (table.has("tension"))
  {
    const std::vector<double> tension = table.numbers("tension");
    strings.tension = std::accumulate(tension.begin(), tension.end(), 0.0);
  }
  if (table.has("foot"))
  {
    const std::vector<double> foot = table.numbers("foot");
    strings.foot = {foot[0], foot[1]};
  }
  return strings;
}

LoadDesign read_load(const TableReader& root, const MaterialStock& stock, const Design& design)
{
  const PlanformCover cover(design.geometry);
  for (const double side : {-0.5, 0.5})
    check_on_plate(root.table("setup"), "bridge_feet", cover, {design.setup.bridge_x, side * design.setup.bridge_feet});
  if (const TableReader handling = root.table("handling"); handling.has("squeeze"))
    handling.fail("squeeze", "is about the ribs of a body, and this is the file of a plate; leave it out");
  return {.strings = read_strings(root, design),
          .soundpost = read_soundpost(root, stock, design, cover),
          .handling = read_handling(root, design, cover),
          .knock_downs = read_knock_downs(root)};
}

BodyLoadDesign read_body_load(const TableReader& root, const Design& top)
{
  if (const TableReader handling = root.table("handling"); handling.has("lift"))
    handling.fail("lift", "is about a bare plate, and this is the file of a body; leave it out");
  const TableReader bridge = root.table("bridge");
  // What makers take at the middle of a bridge (common practice, no source).
  const double usual = usual_by_length(outline_length(top.geometry.outline), 33e-3, 37e-3, 90e-3);
  const double height = bridge.optional_number("height").value_or(usual);
  if (!(height > 0.0))
    bridge.fail("height", "must be greater than 0");
  return {.bridge_height = height,
          .handling = read_handling(root, top, PlanformCover(top.geometry)),
          .knock_downs = read_knock_downs(root)};
}

} // namespace plate
