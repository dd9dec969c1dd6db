// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace plate
{

/// One solution among several of which none is better in both respects.
struct FrontPoint
{
  double mass;     ///< [kg]
  double mismatch; ///< [cents]
  std::string label;
};

/// How near solutions come to what is wanted, over what they weigh.
struct FrontPicture
{
  std::string title;
  std::vector<std::string> lines; ///< beneath the title
  std::vector<FrontPoint> points; ///< at least one
  double reference_mass = 0.0;    ///< marked where it lies in the picture; 0 for none [kg]
};

/// Draws mismatch over mass, SVG or PNG as the ending says.
///
/// @throws InvalidInput if there are no points or a value is not finite
/// @throws IoError      if the file cannot be written
void write_front_picture(const std::filesystem::path& path, const FrontPicture& picture);

} // namespace plate
