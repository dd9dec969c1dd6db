// SPDX-License-Identifier: MPL-2.0
#include "mode_drawing.h"
#include "sheet.h"
#include "sheet_grid.h"

#include <plate/core/error.h>
#include <plate/meshes/picture.h>

#include <algorithm>

namespace plate
{

namespace
{

// Picture units, from the top of a cell.
constexpr double name_at = 8.0;
constexpr double hertz_at = 21.0;
constexpr double loss_at = 33.0;
constexpr double plate_at = 42.0;
constexpr double gap = 14.0;

double least_cell_width(std::span<const ModeShapePicture> modes)
{
  double widest = 0.0;
  for (const ModeShapePicture& mode : modes)
    widest = std::max({widest, text_width(mode_words(mode), cell_name_style),
                       text_width(hertz(mode.frequency_hz), cell_number_style),
                       text_width(loss_words(mode), cell_number_style)});
  return widest + 6.0;
}

} // namespace

void write_contact_sheet(const std::filesystem::path& path, const PlateView& view,
                         std::span<const ModeShapePicture> modes)
{
  if (modes.empty())
    throw InvalidInput("write_contact_sheet: there are no modes to show; compute at least one");
  const PlateDrawing drawing(view, sheet_pieces);
  const SheetGrid grid = fit_grid(modes.size(), {.aspect = drawing.body_width() / drawing.body_length(),
                                                 .around = {gap, plate_at + gap},
                                                 .least_width = least_cell_width(modes)});
  const ModeStyle style = style_for_height(grid.plate[1]);
  Sheet sheet{.title = view.title, .lines = {}, .legend = mode_legend(drawing, style)};
  sheet.legend.add({scale_item(grid.plate[1] / drawing.body_length()), directions_item(view)});
  const auto draw_cell = [&](Canvas& canvas, std::size_t i, const Eigen::Vector2d& corner)
  {
    const double middle = corner[0] + 0.5 * grid.cell[0];
    canvas.text({middle, corner[1] + name_at}, mode_words(modes[i]), cell_name_style);
    canvas.text({middle, corner[1] + hertz_at}, hertz(modes[i].frequency_hz), cell_number_style);
    canvas.text({middle, corner[1] + loss_at}, loss_words(modes[i]), cell_number_style);
    const Frame frame = drawing.fit({middle - 0.5 * grid.plate[0], corner[1] + plate_at}, grid.plate);
    draw_mode(canvas, drawing, frame, picture_shape(view.mesh, modes[i].normal_displacement), style);
  };
  write_sheet(path, sheet, grid, modes.size(), draw_cell);
}

} // namespace plate
