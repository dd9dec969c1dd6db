// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "plate_drawing.h"

#include <filesystem>
#include <functional>
#include <string>

namespace plate
{

/// What a page with one plate says besides its drawing.
struct PlatePage
{
  std::string headline;
  std::string subline; ///< beneath it; may be empty
  Legend legend;       ///< the scale is added to its items
};

/// Writes a page with one plate: title of the view, headline, the plate with the names of its sides, legend.
///
/// @param draw  draws the plate into the frame it is given
void write_plate_page(const std::filesystem::path& path, const PlateView& view, const PlateDrawing& drawing,
                      PlatePage page, const std::function<void(Canvas&, const Frame&)>& draw);

} // namespace plate
