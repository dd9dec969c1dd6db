// SPDX-License-Identifier: MPL-2.0
#include "body_blocks.h"

#include <plate/meshes/outline.h>

#include <algorithm>
#include <utility>

namespace plate
{

namespace
{

/// Wood with its grain along the normal of a plate: its axes 2, 3 and 1 lie along 1, 2 and the normal.
Material standing(const Material& wood)
{
  const OrthotropicElastic& e = wood.elastic;
  const LossFactors& loss = wood.loss;
  Material out = {
      .name = wood.name + " of a block",
      .elastic = {.E1 = e.E2,
                  .E2 = e.E3,
                  .E3 = e.E1,
                  .G12 = e.G23,
                  .G13 = e.G12,
                  .G23 = e.G13,
                  .nu12 = e.nu23,
                  .nu13 = e.nu12 * e.E2 / e.E1,
                  .nu23 = e.nu13 * e.E3 / e.E1},
      .density = wood.density,
      .loss = {.E1 = loss.E2, .E2 = loss.E3, .E3 = loss.E1, .G12 = loss.G23, .G13 = loss.G12, .G23 = loss.G13}};
  return out;
}

/// Footprint of a block, from the face inside the body to beyond the edge: outside the ribs stiffness does nothing.
PolygonRegion footprint(const BodyDesign& body, double end, double half_length)
{
  const double inside = half_length - body.ribs.overhang - total_thickness(body.ribs.laminate) - body.blocks.end.y();
  const double beyond = half_length + body.blocks.end.y();
  const double half_width = 0.5 * body.blocks.end.x();
  return {.points = {{end * inside, -half_width},
                     {end * beyond, -half_width},
                     {end * beyond, half_width},
                     {end * inside, half_width}}};
}

} // namespace

void glue_end_blocks(const BodyDesign& body, Design& plate)
{
  if (body.blocks.end.x() == 0.0)
    return;
  Material wood = standing(body.blocks.material);
  wood.density *= 1e-6; // of no weight: a section without density is refused
  const double half_length = 0.5 * outline_length(plate.geometry.outline);
  for (const double end : {-1.0, 1.0})
  {
    // What a solid does to a plate reaches about as deep into it as it is wide.
    const double height = end > 0.0 ? body.ribs.neck_height : body.ribs.height;
    const double thickness = std::min(0.5 * height, body.blocks.end.y());
    const PolygonRegion region = footprint(body, end, half_length);
    plate.geometry.patches.emplace_back(region);
    plate.patches.push_back({.side = PlateSide::inside,
                             .region = region,
                             .laminate = {.plies = {{.material = wood, .thickness = thickness}}}});
  }
}

} // namespace plate
