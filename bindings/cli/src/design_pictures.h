// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "modes_result.h"

#include <plate/meshes/side_by_side_picture.h>

namespace plate
{

/// The modes of a design for pictures: shapes, patches, stuck-on masses. The result must outlive it.
[[nodiscard]] DesignModes design_modes(const ModesResult& result);

} // namespace plate
