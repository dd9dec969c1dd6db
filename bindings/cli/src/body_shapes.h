// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "body_result.h"

#include <plate/post/mode_compare.h>

namespace plate
{

/// Modes of a body as fields that can be compared between bodies of other meshes and measures.
struct BodyShapes
{
  ModeShapes top;
  ModeShapes back;
  ModeShapes air; ///< pressure, see body_shapes()
};

/// Motion of top and back, and the pressure over the planform of the cavity, of the lowest modes; fewer if there are
/// fewer.
///
/// The pressure is taken over sqrt(density) c w, so that its square over the volume is the share of the air in the
/// potential energy of a mode: with the plates' shares in the kinetic energy it adds up to most of the whole. A mode of
/// the air is known by its pressure then, however the walls yield to it.
[[nodiscard]] BodyShapes body_shapes(const BodyResult& result, Eigen::Index count);

/// Products over top, back and air together; `share_left_out` is that of the plates' mass.
///
/// @throws InvalidInput as shape_products() of plates
[[nodiscard]] ShapeProducts shape_products(const BodyShapes& reference, const BodyShapes& other);

} // namespace plate
