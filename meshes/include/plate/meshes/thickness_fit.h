// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/fit_report.h>
#include <plate/meshes/outline.h>
#include <plate/meshes/surface_fit.h>
#include <plate/meshes/thickness_map.h>

#include <span>

namespace plate
{

/// A fitted thickness and how well it fits.
struct ThicknessFit
{
  SurfaceThickness thickness;
  FitReport report;
};

/// Smooth thickness through points measured with noise.
///
/// Edges are often left thicker than the channel a few millimetres inside, a step that a smooth surface blurs. So the
/// points are also taken as their deviation from the graduation that fits them best, and of the two the surface with
/// the less cross-validated error is kept.
///
/// @param points  as fit_surface() takes them: thickness along the normal
/// @throws InvalidInput as fit_surface()
/// @source pinned by tests/unit/meshes/arch_fit_test.cpp
[[nodiscard]] ThicknessFit fit_thickness(std::span<const SurfacePoint> points, const Outline& outline);

} // namespace plate
