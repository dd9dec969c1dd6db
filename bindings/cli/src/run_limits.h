// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/design/body_design.h>
#include <plate/design/body_document.h>
#include <plate/design/design.h>
#include <plate/design/design_document.h>

namespace plate
{

/// How much a run may take.
struct RunLimits
{
  double unknowns; ///< more take hours
  double bytes;    ///< memory
};

/// Three million unknowns, and the memory the machine has to spare.
[[nodiscard]] RunLimits run_limits();

/// Unknowns that the mesh of a design is expected to have, good to a fifth.
[[nodiscard]] double expected_unknowns(const Design& design);

/// Whether the modes of a design can be computed within the limits, at the mesh size it states.
[[nodiscard]] bool fits_limits(const Design& design, int num_modes, const RunLimits& limits);

/// Makes sure, before any work, that the modes of a design can be computed within the limits.
///
/// @param num_modes  elastic modes wanted
/// @throws DesignError naming mesh.size and the least size that fits
void check_run(const DesignDocument& document, const Design& design, int num_modes, const RunLimits& limits);

/// The same for a body, whose mesh size its own file states.
void check_run(const BodyDocument& document, const BodyDesign& design, int num_modes, const RunLimits& limits);

} // namespace plate
