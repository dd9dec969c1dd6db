// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/body.h>
#include <plate/design/body_design.h>
#include <plate/meshes/body_mesh.h>

namespace plate
{

/// Volume of what backs the ribs of a piece [m3].
[[nodiscard]] double backing_volume(const RibPiece& piece, const BodyDesign& design);

/// The wall of a piece of ribs with what backs it.
///
/// Ribs have z for their reference axis, which is tangent to them all round.
[[nodiscard]] BodyPart rib_part(RibPiece piece, const BodyDesign& design);

} // namespace plate
