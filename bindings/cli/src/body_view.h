// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/design/build_body.h>
#include <plate/meshes/body_picture.h>

namespace plate
{

/// Both plates from outside and the air, which the view points into.
[[nodiscard]] BodyView body_view(const BodyModel& model, const BodyDesign& design);

} // namespace plate
