// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/arching.h>
#include <plate/meshes/fit_report.h>
#include <plate/meshes/outline.h>
#include <plate/meshes/surface_fit.h>

#include <span>

namespace plate
{

/// A fitted arch and how well it fits.
struct ArchFit
{
  SurfaceArching arching;
  FitReport report;
};

/// Smooth arch through points measured with noise.
///
/// A smooth surface blurs the channel, and waves that noise leaves in it soften a thin plate: a tenth of a millimetre
/// costs a mode a percent. So the points are also taken as their deviation from the cycloid arch that fits them best,
/// which is smooth where the arch is not, and of the two the surface with the less cross-validated error is kept.
///
/// @param points  as fit_surface() takes them: heights of the mid-surface over the rim
/// @throws InvalidInput as fit_surface()
/// @source pinned by tests/unit/meshes/arch_fit_test.cpp and tests/unit/design/measured_plate_test.cpp
[[nodiscard]] ArchFit fit_arching(std::span<const SurfacePoint> points, const Outline& outline);

} // namespace plate
