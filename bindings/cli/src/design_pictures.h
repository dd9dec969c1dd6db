// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "modes_result.h"

#include <plate/meshes/side_by_side_picture.h>

#include <string>

namespace plate
{

/// A plate for pictures: patches, stuck-on masses. The model must outlive it.
[[nodiscard]] PlateView plate_view(const Model& model, const std::string& title);

/// The modes of a design for pictures: shapes, patches, stuck-on masses. The result must outlive it.
[[nodiscard]] DesignModes design_modes(const ModesResult& result);

} // namespace plate
