// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/picture.h>

#include <filesystem>
#include <string>
#include <vector>

namespace plate
{

/// What a plate does under a load, to be drawn. Format, errors and repeatability as in picture.h.
struct LoadPicture
{
  std::string load;                             ///< in words, e.g. "strings, 87 N"
  std::vector<double> normal_displacement = {}; ///< (num_nodes), positive outward [m]
  std::vector<double> strength_used = {};       ///< (num_nodes), 1 over the margin [-]
  MarkedPoint worst = {};                       ///< where the margin is least
};

/// Displacement along the normal in mm with labelled contours, inward and outward in two hues.
void write_deflection_map(const std::filesystem::path& path, const PlateView& view, const LoadPicture& picture);

/// Share of the strength that the load uses, in %, with labelled contours and the worst place marked. At 100 % a ply
/// fails.
void write_strength_map(const std::filesystem::path& path, const PlateView& view, const LoadPicture& picture);

} // namespace plate
