// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/inner_shape.h>
#include <plate/meshes/outline.h>
#include <plate/meshes/surface_fit.h>

#include <optional>
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

/// A measured thickness: a graduation, which may be none, with a smooth surface on it.
struct SurfaceThickness
{
  std::optional<GraduatedThickness> graduation;
  SmoothSurface deviation; ///< thickness along the normal over that graduation [m]
  double scale = 1.0;      ///< factor on both [-]
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
  [[nodiscard]] double graduated(const GraduatedThickness& t, const Eigen::Vector2d& point) const;
  void check_surface(const SurfaceThickness& map, const Outline& outline) const;

  ThicknessMap map_;
  double length_; // [m]
  double width_;  // [m]
  InnerShape shape_;
};

} // namespace plate
