// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/core/units.h>
#include <plate/meshes/curve.h>
#include <plate/meshes/outline.h>

#include <optional>
#include <variant>
#include <vector>

namespace plate
{

/// An f-hole: two round eyes of different size, hooks, wings, and a stem with a nick on each side in its middle.
///
/// Described for the side y > 0. Measures left out follow the plate (f_hole_with_defaults()).
struct FHole
{
  std::optional<double> length = {};          ///< over all, along the centre line of the plate [m]
  std::optional<Eigen::Vector2d> where = {};  ///< middle between the eyes; the nicks lie at its x [m]
  std::optional<double> upper_eye = {};       ///< diameter [m]
  std::optional<double> lower_eye = {};       ///< diameter [m]
  std::optional<double> stem = {};            ///< width of the stem [m]
  std::optional<Angle> tilt = {};             ///< of the line through the eyes from the centre line, lower eye outwards
  bool mirror = true;                    ///< a second one on the other side of the centre line
};

/// A straight slot with round ends.
struct Slot
{
  Eigen::Vector2d centre; ///< [m]
  double length;          ///< over all [m]
  double width;           ///< [m]
  Angle angle;            ///< of its axis from x to y
  bool mirror = true;     ///< a second one on the other side of the centre line
};

/// A cut-out along any closed curve, usually fitted to measured points.
struct CurveHole
{
  CurveLoop loop;     ///< either way round
  bool mirror = true; ///< a second one on the other side of the centre line
};

using Soundhole = std::variant<FHole, Slot, CurveHole>;

/// The f-hole with every measure set; those left out are the usual ones for a plate of that length,
/// interpolated between violin, viola and cello (common practice of makers).
///
/// @throws InvalidInput if a measure is not finite and positive or does not fit the others
[[nodiscard]] FHole f_hole_with_defaults(const FHole& hole, const Outline& outline);

/// The holes of one entry as loops with the plate to the left (clockwise): as given, then its mirror image if any.
///
/// @throws InvalidInput if the measures make no hole
[[nodiscard]] std::vector<CurveLoop> soundhole_loops(const Soundhole& hole, const Outline& outline);

} // namespace plate
