// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/design/build_body.h>

#include <array>
#include <vector>

namespace plate
{

/// The back's mesh within the ribs; the height of the top comes from its surface, holes or not.
///
/// @param line  of the ribs on the back, in its own axes
[[nodiscard]] CavityMesh space_within(const BodyDesign& design, const BodyPart& back,
                                      const std::vector<std::array<int, 4>>& line);

/// Soundholes of a plate as the air finds them, seen along z.
///
/// @throws InvalidInput as soundhole_loops()
[[nodiscard]] std::vector<HoleOutline> hole_outlines(const PlateGeometry& plate);

} // namespace plate
