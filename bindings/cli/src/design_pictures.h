// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "body_result.h"
#include "modes_result.h"

#include <plate/meshes/side_by_side_picture.h>

#include <string>

namespace plate
{

/// A plate for pictures: patches, stuck-on masses. The model must outlive it.
[[nodiscard]] PlateView plate_view(const Model& model, const std::string& title);

/// The modes of a design for pictures: shapes, patches, stuck-on masses. The result must outlive it.
[[nodiscard]] DesignModes design_modes(const ModesResult& result);

/// Top or back of a body for pictures, seen from outside: the motion of that plate in the body's modes, its title with
/// the plate's name. The result must outlive it.
[[nodiscard]] DesignModes body_plate_modes(const BodyResult& result, std::size_t part);

} // namespace plate
