// SPDX-License-Identifier: MPL-2.0
#include "sheet.h"

#include <algorithm>

namespace plate
{

namespace
{

// Picture units.
constexpr double margin = 12.0;
constexpr double least_width = 420.0; // for title and legend
constexpr double title_at = 20.0;
constexpr double line_height = 16.0;
constexpr double below_lines = 20.0;
constexpr double above_legend = 6.0;

} // namespace

LegendItem directions_item(const PlateView& view)
{
  return note_item(view.up + " up, " + view.left + " left");
}

void write_sheet(const std::filesystem::path& path, const Sheet& sheet, const SheetGrid& grid, std::size_t count,
                 const std::function<void(Canvas&, std::size_t, const Eigen::Vector2d&)>& draw_cell)
{
  const double width = std::max(grid.size()[0] + 2.0 * margin, least_width);
  const double top = title_at + line_height * static_cast<double>(sheet.lines.size()) + below_lines;
  const double legend_top = top + grid.size()[1] + above_legend;
  Canvas canvas(path, {width, legend_top + sheet.legend.height(width)});
  const auto centred = [&](double y, const std::string& words, const TextStyle& style) {
    canvas.text({0.5 * width, y}, shortened(words, style, width - 2.0 * margin), aligned(style, Align::centre));
  };
  centred(title_at, sheet.title, title_text);
  for (std::size_t i = 0; i < sheet.lines.size(); ++i)
    centred(title_at + line_height * (static_cast<double>(i) + 1.15), sheet.lines[i], label_text);
  const Eigen::Vector2d corner(0.5 * (width - grid.size()[0]), top);
  for (std::size_t i = 0; i < count; ++i)
    draw_cell(canvas, i, corner + grid.corner(i));
  sheet.legend.draw(canvas, legend_top);
  canvas.write();
}

} // namespace plate
