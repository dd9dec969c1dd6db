// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/soundhole.h>

#include "f_hole.h"

#include <plate/core/error.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace plate
{

namespace
{

using Eigen::Vector2d;

using std::numbers::pi;

CurveLoop loop_of(const Slot& slot)
{
  if (!(slot.centre.allFinite() && std::isfinite(slot.angle.in_radians())))
    throw InvalidInput("slot: centre and angle must be finite numbers");
  if (!(std::isfinite(slot.length) && slot.width > 0.0 && slot.length > slot.width))
    throw InvalidInput(message("slot: needs width > 0 and length over all > width; got length ", slot.length * 1e3,
                               " mm, width ", slot.width * 1e3, " mm"));
  const double r = 0.5 * slot.width;
  const double half = 0.5 * slot.length - r; // middle to the centre of a round end
  const auto end = [&](double sign)
  {
    return EllipticArc{.centre = {sign * half, 0.0}, .u = {0.0, sign * r}, .v = {sign * r, 0.0}, .from = 0.0, .to = pi};
  };
  CurveLoop loop{{line({-half, r}, {half, r}), end(1.0), line({half, -r}, {-half, -r}), end(-1.0)}};
  for (CurvePiece& piece : loop.pieces)
    piece = moved(piece, slot.angle.in_radians(), slot.centre);
  return loop;
}

CurveLoop loop_of(const CurveHole& hole)
{
  return enclosed_area(hole.loop) > 0.0 ? reversed(hole.loop) : hole.loop;
}

} // namespace

std::vector<CurveLoop> soundhole_loops(const Soundhole& hole, const Outline& outline)
{
  std::vector<CurveLoop> loops;
  if (const auto* f = std::get_if<FHole>(&hole))
    loops.push_back(f_hole_loop(f_hole_with_defaults(*f, outline)));
  else if (const auto* slot = std::get_if<Slot>(&hole))
    loops.push_back(loop_of(*slot));
  else
    loops.push_back(loop_of(std::get<CurveHole>(hole)));
  if (std::visit([](const auto& h) { return h.mirror; }, hole))
    loops.push_back(mirrored(loops.front()));
  return loops;
}

} // namespace plate
