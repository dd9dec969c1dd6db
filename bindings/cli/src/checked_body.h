// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/design/body_design.h>
#include <plate/design/body_document.h>

namespace plate
{

/// A body that can be computed: its air leaves through the top alone, and the run fits the machine. Warns of points
/// left out of fits.
///
/// @throws DesignError if it cannot
[[nodiscard]] BodyDesign checked_body(const BodyDocument& document, int num_modes);

} // namespace plate
