// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/body_picture.h>
#include <plate/meshes/load_picture.h>

#include <filesystem>
#include <string>

namespace plate
{

/// What a body does under a load, to be drawn. Format, errors and repeatability as in picture.h.
struct BodyLoadPicture
{
  std::string load; ///< in words, e.g. "strings: 87 N on the bridge"
  LoadPicture top;  ///< its own words are not used; a mark without a label is left out
  LoadPicture back; ///< seen from behind
};

/// Displacement of top and back along their normals in mm, side by side from outside in one scale of colours.
void write_deflection_map(const std::filesystem::path& path, const BodyView& view, const BodyLoadPicture& picture);

/// Share of the strength that the load uses in top and back, in %, the same way, the worst places marked.
void write_strength_map(const std::filesystem::path& path, const BodyView& view, const BodyLoadPicture& picture);

} // namespace plate
