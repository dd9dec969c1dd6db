// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/picture.h>

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace plate
{

/// A mode that is to stay where it is while thickness changes.
struct UnmovedMode
{
  std::string label;          ///< e.g. "M2 X"
  std::vector<double> slopes; ///< as ThicknessSlopePicture::slopes
};

/// Where thickness counts for a mode, to be drawn. Format, errors and repeatability as in picture.h.
struct ThicknessSlopePicture
{
  std::string label;                       ///< of the mode, e.g. "mode 5, M5 ring, 254.0 Hz"
  double whole = 0.0;                      ///< by an even change of the thickness of the whole plate [Hz/m]
  std::vector<double> slopes = {};         ///< (num_nodes) [Hz/(m m2)]
  std::optional<UnmovedMode> unmoved = {}; ///< lines are drawn where thickness leaves this mode alone
};

/// What the frequency gains for each mm added on each cm2, in Hz, with labelled contours; two hues for up and down.
///
/// Colours end at what 97 % of the area stay within; the legend says how far the rest goes.
void write_thickness_slope_map(const std::filesystem::path& path, const PlateView& view,
                               const ThicknessSlopePicture& picture);

} // namespace plate
