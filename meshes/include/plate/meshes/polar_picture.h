// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace plate
{

/// A quantity over direction.
struct PolarCurve
{
  std::string label = {};          ///< in the legend
  std::vector<double> values = {}; ///< at equal angles over the whole turn, from 0 on, at least three, not negative;
                                   ///< angles as those of plies: 0 towards the neck, growing to the bass side of a top
                                   ///< seen from outside [unit of the panel]
};

/// Curves of one quantity with its own radial scale.
struct PolarPanel
{
  std::string heading = {}; ///< e.g. "stretching, E"
  std::string unit = {};    ///< e.g. "GPa"
  std::vector<PolarCurve> curves = {};
};

/// One or two quantities over direction, side by side.
struct PolarPicture
{
  std::string title = {};
  std::vector<PolarPanel> panels = {}; ///< one or two
};

/// Closed curves about a radial grid: direction 0 up (towards the neck), 90° to the left; values and unit at the grid,
/// the legend below. Curves with the same label in both panels have the same line; up to six labels.
///
/// Format, errors and repeatability as in picture.h.
void write_polar_picture(const std::filesystem::path& path, const PolarPicture& picture);

} // namespace plate
