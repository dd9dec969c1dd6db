// SPDX-License-Identifier: MPL-2.0
#include "body_checks.h"

#include <plate/core/error.h>
#include <plate/core/units.h>
#include <plate/mesh/planform_region.h>
#include <plate/meshes/outline.h>
#include <plate/meshes/plate_geometry.h>

#include <algorithm>
#include <cmath>
#include <variant>
#include <vector>

namespace plate
{

namespace
{

using Eigen::Vector2d;

std::vector<Vector2d> outline_points(const Design& plate, int per_piece)
{
  return sample(boundary_of(plate.geometry).loops.front(), per_piece);
}

double distance_to(const std::vector<Vector2d>& polygon, const Vector2d& point)
{
  double least = HUGE_VAL;
  for (std::size_t i = 0; i < polygon.size(); ++i)
  {
    const Vector2d& a = polygon[i];
    const Vector2d side = polygon[(i + 1) % polygon.size()] - a;
    const double along = std::clamp(side.dot(point - a) / side.squaredNorm(), 0.0, 1.0);
    least = std::min(least, (a + along * side - point).norm());
  }
  return least;
}

/// Two measured outlines differ by what measuring leaves; build_body() looks at those.
bool both_measured(const BodyDesign& body)
{
  return std::holds_alternative<CurveOutline>(body.top.geometry.outline) &&
         std::holds_alternative<CurveOutline>(body.back.geometry.outline);
}

void check_outlines(const TableReader& root, const BodyDesign& body)
{
  constexpr double rounding = 5e-5; // [m]
  if (both_measured(body))
    return;
  const std::vector<Vector2d> back = outline_points(body.back, 64);
  for (const Vector2d& at : outline_points(body.top, 4))
    if (const double away = distance_to(back, {at.x(), -at.y()}); away > rounding)
      root.table("body").fail("back", message("the outline of the back is ", away * millimetres,
                                              " mm away from that of the top at x = ", at.x() * millimetres,
                                              ", y = ", at.y() * millimetres,
                                              " mm of the top; give both plates the same outline"));
}

void check_overhang(const TableReader& root, const BodyDesign& body)
{
  constexpr double most = 0.1; // of the width
  const double width = outline_width(body.top.geometry.outline);
  if (body.ribs.overhang > most * width)
    root.table("ribs").fail("overhang",
                            message("at most a tenth of the plates' width of ", width * millimetres, " mm"));
}

void check_blocks(const TableReader& root, const BodyDesign& body)
{
  constexpr double most = 0.25; // of the length
  const double length = outline_length(body.top.geometry.outline);
  const double width = outline_width(body.top.geometry.outline);
  if (body.blocks.end.x() > width || body.blocks.end.y() > most * length)
    root.table("blocks").fail("end", message("blocks of a body ", length * millimetres, " x ", width * millimetres,
                                             " mm are at most as wide as it and a quarter of its length deep"));
}

void check_post(const TableReader& root, const BodyDesign& body)
{
  if (!body.soundpost)
    return;
  const double ribs = body.ribs.overhang + total_thickness(body.ribs.laminate);
  const double away = distance_to(outline_points(body.top, 64), body.soundpost->at);
  if (const double least = ribs + 0.5 * body.soundpost->diameter; away < least)
    root.table("soundpost")
        .fail("at", message("lies ", away * millimetres, " mm inside the outline, on or outside the ribs; at least ",
                            least * millimetres, " mm"));
}

} // namespace

void check_body_parts(const TableReader& root, const BodyDesign& body)
{
  check_outlines(root, body);
  check_overhang(root, body);
  check_blocks(root, body);
  check_post(root, body);
}

} // namespace plate
