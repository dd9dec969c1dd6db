// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "polyline.h"
#include "refined_surface.h"

#include <span>
#include <vector>

namespace plate
{

/// A nodal field on a refined surface, sampled once and contoured at many levels.
///
/// Contours are found on the small triangles; each of their points is then moved along its edge to where the cubic
/// field itself has the level, so that points lie on the true contour and only the chords between them do not. (Fields
/// kept within their nodes are drawn as the small triangles have them.)
/// Points at the level, but for rounding, count as above it: a region all at one level has no stray contours.
class ContouredField
{
public:
  /// Surface and nodal values must outlive the object.
  /// @throws InvalidInput if the field does not have one finite value for each node
  ContouredField(const RefinedSurface& surface, std::span<const double> nodal,
                 Interpolation interpolation = Interpolation::cubic);

  /// Contour lines at a level, in the plate's plane, the higher side to the left [m].
  [[nodiscard]] std::vector<Polyline> lines(double level) const;

  [[nodiscard]] const RefinedSurface& surface() const { return surface_; }
  [[nodiscard]] const std::vector<double>& values() const { return values_; } ///< at the surface's points
  [[nodiscard]] double lowest() const { return lowest_; }
  [[nodiscard]] double highest() const { return highest_; }

private:
  const RefinedSurface& surface_;
  std::span<const double> nodal_;
  Interpolation interpolation_;
  std::vector<double> values_;
  double lowest_ = 0.0;
  double highest_ = 0.0;
  double rounding_ = 0.0;
};

/// The surface's own boundary: outline and holes, closed, the plate to the left [m].
[[nodiscard]] std::vector<Polyline> boundary_lines(const RefinedSurface& surface);

/// Outline of a set of the mesh's triangles, closed, the set to the left [m].
[[nodiscard]] std::vector<Polyline> outline_of(const RefinedSurface& surface, std::span<const int> mesh_triangles);

} // namespace plate
