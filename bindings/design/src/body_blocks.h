// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/design/body_design.h>

namespace plate
{

/// Glues the blocks at both ends of a body to one of its plates, over their whole footprint.
///
/// A block is a solid from plate to plate; to a plate it is a thick layer inside, without mass, as the ribs carry that.
/// Corner blocks are left out: glued on they raise A0 of a viola by 0.1 %.
/// @param plate  top or back of that body
void glue_end_blocks(const BodyDesign& body, Design& plate);

} // namespace plate
