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
[[nodiscard]] Cavity space_within(const BodyDesign& design, const BodyPart& back,
                                  const std::vector<std::array<int, 4>>& line);

} // namespace plate
