// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/curve.h>

#include <variant>

namespace plate
{

/// Outline of a violin-family plate from its length and three full widths; the four corners end in a narrow blunt tip.
///
/// Our own construction: circular arcs at both ends and curvature-continuous curves between the points where the
/// widths are measured, so that length and widths come out exactly. Proportions along the body are common practice.
struct BoutsOutline
{
  double length;      ///< of the body [m]
  double lower_bout;  ///< greatest width below the corners [m]
  double centre_bout; ///< least width between the corners [m]
  double upper_bout;  ///< greatest width above the corners [m]
};

struct RectangleOutline
{
  double length; ///< along x [m]
  double width;  ///< along y [m]
};

struct EllipseOutline
{
  double length; ///< along x [m]
  double width;  ///< along y [m]
};

/// Any closed curve, usually fitted to measured points; it need not be symmetric.
struct CurveOutline
{
  CurveLoop loop; ///< counter-clockwise
  double length;  ///< extent along x [m]
  double width;   ///< extent along y [m]
};

/// The outline of a closed curve with its measures.
///
/// @throws InvalidInput if the origin is not on the centre line at half the length: off by more than a hundredth of the
///         length or a tenth of the width
[[nodiscard]] CurveOutline curve_outline(const CurveLoop& loop);

/// Planform of a plate: x towards the neck, y to the bass side of a top, origin on the centre line at half length.
using Outline = std::variant<BoutsOutline, RectangleOutline, EllipseOutline, CurveOutline>;

/// Length along x [m].
[[nodiscard]] double outline_length(const Outline& outline);
/// Greatest full width [m].
[[nodiscard]] double outline_width(const Outline& outline);

/// The outline as a counter-clockwise loop. But for a CurveOutline, which is given as it is, it is symmetric about the
/// centre line and starts at the neck end on the centre line; a rectangle starts at its corner (-x, -y) with the sides y-,
/// x+, y+, x- in this order.
///
/// @throws InvalidInput if a measure is not finite and positive, or the bouts are out of proportion
[[nodiscard]] CurveLoop outline_loop(const Outline& outline);

/// Distance between the two edges of a blunt corner tip of a `bouts` outline [m].
[[nodiscard]] double corner_tip_width(const BoutsOutline& outline);

} // namespace plate
