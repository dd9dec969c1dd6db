// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "body_result.h"

#include <plate/post/mode_compare.h>

#include <array>

namespace plate
{

/// Shapes of both plates of a body: what makes modes of two bodies alike.
struct BodyShapes
{
  std::array<ModeShapes, 2> plates; ///< top and back
};

/// Shapes of the lowest modes with the air; fewer if there are fewer.
[[nodiscard]] BodyShapes body_shapes(const BodyResult& result, Eigen::Index count);

/// Products over both plates together.
///
/// @throws InvalidInput as shape_products() of plates
[[nodiscard]] ShapeProducts shape_products(const BodyShapes& reference, const BodyShapes& other);

} // namespace plate
