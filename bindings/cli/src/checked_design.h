// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/design/body_design.h>
#include <plate/design/body_document.h>
#include <plate/design/design.h>
#include <plate/design/design_document.h>

namespace plate
{

/// The design of a file, made sure that its modes can be computed; warns of points left out of its fits.
///
/// @param num_modes  elastic modes wanted
/// @throws DesignError
[[nodiscard]] Design checked_design(const DesignDocument& document, int num_modes);

/// The same for a body; its air must leave through the top alone.
[[nodiscard]] BodyDesign checked_body(const BodyDocument& document, int num_modes);

} // namespace plate
