// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/design/build_body.h>
#include <plate/meshes/body_picture.h>

#include <string>

namespace plate
{

/// Both plates from outside and the air, which the view points into.
[[nodiscard]] BodyView body_view(const BodyModel& model, const BodyDesign& design);

/// A part of a body, top or back, as a view, without the bridge's feet, which are no masses stuck on, and without the
/// blocks' footprints, which follow the patches of its design. The part must outlive it.
[[nodiscard]] PlateView body_plate_view(const BodyPart& part, const Design& design, const std::string& title);

} // namespace plate
