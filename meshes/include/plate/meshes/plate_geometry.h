// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/mesh/planform_region.h>
#include <plate/meshes/arching.h>
#include <plate/meshes/bar_line.h>
#include <plate/meshes/outline.h>
#include <plate/meshes/soundhole.h>
#include <plate/meshes/thickness_map.h>

#include <optional>
#include <string>
#include <vector>

namespace plate
{

/// Everything about the shape of one plate.
struct PlateGeometry
{
  Outline outline;
  Arching arching;
  ThicknessMap thickness;
  std::vector<Soundhole> soundholes;
  std::optional<BarFootprintShape> bar;
  std::vector<PlanformRegion> patches = {}; ///< mesh lines follow their edges where they have room
};

/// The boundary curves of a plate; the plate lies to the left of each.
struct PlateBoundary
{
  std::vector<CurveLoop> loops;        ///< the outline, then the holes
  std::vector<std::string> names;      ///< of the loops: "outline", "hole 1", "hole 2", ...
  std::vector<std::size_t> soundholes; ///< for loop i > 0 the entry i-1: index into PlateGeometry::soundholes
};

/// Boundary curves of a geometry, unchecked against each other.
///
/// @throws InvalidInput as outline_loop() and soundhole_loops()
[[nodiscard]] PlateBoundary boundary_of(const PlateGeometry& geometry);

/// Area of the planform from its curves [m^2].
[[nodiscard]] double planform_area(const PlateGeometry& geometry);

/// Tells which points of the planform the plate covers.
class PlanformCover
{
public:
  /// @throws InvalidInput as boundary_of()
  explicit PlanformCover(const PlateGeometry& geometry);

  /// Whether a point lies inside the outline and outside every hole; curves are taken as 64 chords a piece.
  [[nodiscard]] bool contains(const Eigen::Vector2d& point) const;

private:
  std::vector<PolygonRegion> loops_; // the outline, then the holes
};

/// Makes sure that a geometry can be meshed: finite, simple curves, holes inside the outline and apart from each other
/// and from the bar, the bar inside the plate.
///
/// @throws InvalidInput naming the part, the distance and what would fit
void check_geometry(const PlateGeometry& geometry);

} // namespace plate
