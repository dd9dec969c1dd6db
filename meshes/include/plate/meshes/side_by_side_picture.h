// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/picture.h>

#include <cstddef>
#include <filesystem>
#include <span>
#include <vector>

namespace plate
{

/// One of two designs to be shown side by side.
struct DesignModes
{
  PlateView view;    ///< its title names the design
  double mass = 0.0; ///< [kg]
  std::vector<ModeShapePicture> modes = {};
};

/// Modes of two designs that belong together, by their place in DesignModes::modes.
struct ModePair
{
  std::size_t first = 0;
  std::size_t second = 0;
};

/// How far one frequency is from another.
struct FrequencyDifference
{
  double percent = 0.0; ///< [%]
  double cents = 0.0;   ///< hundredths of an equally tempered semitone
};

/// Difference of `to` from `from`, both positive [Hz].
[[nodiscard]] FrequencyDifference frequency_difference(double from_hz, double to_hz);

/// Two designs at one scale: each pair of modes with both pictures, both frequencies, and the difference of the second
/// from the first in % and cents; titles and masses above. Of the second mode of a pair the sign is shown that makes it
/// most like the first.
///
/// Format, errors and repeatability as in picture.h; InvalidInput also for no pair, for one that names a mode that does
/// not exist, and for a mode in it without a positive frequency.
void write_side_by_side(const std::filesystem::path& path, const DesignModes& first, const DesignModes& second,
                        std::span<const ModePair> pairs);

} // namespace plate
