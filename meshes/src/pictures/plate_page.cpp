// SPDX-License-Identifier: MPL-2.0
#include "plate_page.h"

#include <algorithm>

namespace plate
{

namespace
{

// Picture units.
constexpr double margin = 26.0; // beside the plate, room for the names of its sides
constexpr double text_margin = 12.0;
constexpr double least_width = 350.0; // of the page, for headline and legend
constexpr double plate_height = 430.0;
constexpr double greatest_plate_width = 420.0;
constexpr double top = 84.0; // of the plate
constexpr double above_legend = 18.0;

} // namespace

void write_plate_page(const std::filesystem::path& path, const PlateView& view, const PlateDrawing& drawing,
                      PlatePage page, const std::function<void(Canvas&, const Frame&)>& draw)
{
  const double scale = std::min(plate_height / drawing.body_length(), greatest_plate_width / drawing.body_width());
  const Eigen::Vector2d size = scale * Eigen::Vector2d(drawing.body_width(), drawing.body_length());
  const double width = std::max(size[0] + 2.0 * margin, least_width);
  const double legend_top = top + size[1] + above_legend;
  page.legend.items.push_back(scale_item(scale));
  Canvas canvas(path, {width, legend_top + page.legend.height(width)});

  const auto heading = [&](double y, const std::string& words, const TextStyle& style) {
    canvas.text({0.5 * width, y}, shortened(words, style, width - 2.0 * text_margin), aligned(style, Align::centre));
  };
  heading(14.0, view.title, note_text);
  heading(36.0, page.headline, headline_text);
  heading(56.0, page.subline, label_text);
  const Frame frame = drawing.fit({0.5 * (width - size[0]), top}, size);
  draw_directions(canvas, view, frame, size);
  draw(canvas, frame);
  page.legend.draw(canvas, legend_top);
  canvas.write();
}

} // namespace plate
