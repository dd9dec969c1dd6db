// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "legend.h"
#include "sheet_grid.h"

#include <plate/meshes/picture.h>

#include <filesystem>
#include <functional>
#include <string>
#include <vector>

namespace plate
{

inline constexpr int sheet_pieces = 200; ///< fineness of the plates on a sheet, see PlateDrawing

inline constexpr TextStyle cell_name_style = aligned(strong_text, Align::centre);  ///< what stands over a cell
inline constexpr TextStyle cell_number_style = aligned(label_text, Align::centre); ///< and beneath it

/// A page of cells in a grid with a title above and a legend below.
struct Sheet
{
  std::string title;
  std::vector<std::string> lines; ///< beneath the title
  Legend legend;
};

/// Which way a plate lies, for sheets whose plates have no names at their sides.
[[nodiscard]] LegendItem directions_item(const PlateView& view);

/// @param draw_cell  draws the cell of a number at its top left corner
void write_sheet(const std::filesystem::path& path, const Sheet& sheet, const SheetGrid& grid, std::size_t count,
                 const std::function<void(Canvas&, std::size_t, const Eigen::Vector2d&)>& draw_cell);

} // namespace plate
