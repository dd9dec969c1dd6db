// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/inner_shape.h>
#include <plate/meshes/outline.h>
#include <plate/meshes/surface_fit.h>

#include <variant>

namespace plate
{

/// The same thickness everywhere.
struct UniformThickness
{
  double value; ///< [m]
};

/// A maker's graduation: thickest in the middle under the bridge, less in the bouts, least in the channel, with an edge
/// of its own; smooth in between.
///
/// `centre` holds at the origin and fades out over about an eighth of the length; `bouts` between that and the channel;
/// `channel` along the channel (ArchSurface: a fiftieth of the length inside the edge); `edge` on the flat rim and in
/// the corners.
struct GraduatedThickness
{
  double centre;  ///< [m]
  double bouts;   ///< [m]
  double channel; ///< [m]
  double edge;    ///< [m]
};

/// A thickness field, usually fitted to measured points.
struct SurfaceThickness
{
  SmoothSurface surface; ///< along the normal [m]
  double scale = 1.0;    ///< factor on it [-]
};

/// Thickness of a solid plate along its normal; a laminate of constant thickness is `UniformThickness`.
using ThicknessMap = std::variant<UniformThickness, GraduatedThickness, SurfaceThickness>;

/// The thickness t(x, y) of one plate, continuous to the second derivative.
class ThicknessField
{
public:
  /// @throws InvalidInput if a thickness is not finite and positive, for a surface anywhere inside the outline
  ThicknessField(const Outline& outline, const ThicknessMap& map);

  [[nodiscard]] double at(const Eigen::Vector2d& point) const; ///< along the normal [m]

private:
  ThicknessMap map_;
  double length_; // [m]
  double width_;  // [m]
  InnerShape shape_;
};

} // namespace plate
