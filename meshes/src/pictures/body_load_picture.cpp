// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/body_load_picture.h>

#include "load_maps.h"
#include "sheet.h"

#include <plate/core/units.h>

#include <algorithm>
#include <array>
#include <utility>

namespace plate
{

namespace
{

// Picture units, from the top of the cell that holds both plates.
constexpr double name_at = 8.0;
constexpr double plate_at = 18.0;
constexpr double between_plates = 26.0;
constexpr double gap = 8.0;

/// One plate with its field.
struct MapSide
{
  MapSide(const PlateView& view, std::vector<double> shown)
      : drawing(view), values(std::move(shown)), field(drawing.surface(), values, Interpolation::within_nodes)
  {
  }

  PlateDrawing drawing;
  std::vector<double> values; // the field's
  ContouredField field;
};

FieldRange over_both(const std::array<const MapSide*, 2>& sides)
{
  const FieldRange a = range_of(sides[0]->field);
  const FieldRange b = range_of(sides[1]->field);
  return {.lowest = std::min(a.lowest, b.lowest), .highest = std::max(a.highest, b.highest)};
}

void write_both(const std::filesystem::path& path, const BodyView& view, const MapSide& top, const MapSide& back,
                MapContent map, const ColourMap& colours)
{
  const std::array<const MapSide*, 2> sides = {&top, &back};
  const FieldRange all = over_both(sides);
  set_contours(map, all.highest - all.lowest);
  const double length = std::max(top.drawing.body_length(), back.drawing.body_length());
  const double width = std::max(top.drawing.body_width(), back.drawing.body_width());
  const double words = std::max(text_width(view.top.title, title_text), text_width(map.remark, label_text));
  const SheetGrid grid = fit_grid(1, {.plates = 2.0,
                                      .aspect = width / length,
                                      .around = {between_plates + gap, plate_at + gap},
                                      .least_width = words});
  Sheet sheet{.title = view.top.title,
              .lines = {map.headline, map.remark, "both plates from outside, neck end up"},
              .legend = {.bar = {}, .items = top.drawing.legend_items()}};
  if (!(all.highest - all.lowest < map.least_range))
    sheet.legend.bar = colour_bar(all, map, colours);
  sheet.legend.add(back.drawing.legend_items());
  sheet.legend.add({scale_item(grid.plate[1] / length),
                    note_item("top: " + view.top.left + " left; back: " + view.back.left + " left")});
  write_sheet(path, sheet, grid, 1,
              [&](Canvas& canvas, std::size_t, const Eigen::Vector2d& corner)
              {
                const double step = grid.plate[0] + between_plates;
                double middle = corner[0] + 0.5 * (grid.cell[0] - step);
                for (const MapSide* side : sides)
                {
                  canvas.text({middle, corner[1] + name_at}, side == &top ? "top" : "back", cell_name_style);
                  Frame frame = side->drawing.fit({middle - 0.5 * grid.plate[0], corner[1] + plate_at}, grid.plate);
                  frame.scale = grid.plate[1] / length;
                  draw_map(canvas, side->drawing, frame, side->field, map, colours, all);
                  middle += step;
                }
              });
}

PlateView marked(PlateView view, const MarkedPoint& worst)
{
  if (worst.label.empty())
    view.points.clear();
  else
    view.points = {worst};
  return view;
}

} // namespace

void write_deflection_map(const std::filesystem::path& path, const BodyView& view, const BodyLoadPicture& picture)
{
  check_size("write_deflection_map", picture.top.normal_displacement, view.top.mesh);
  check_size("write_deflection_map", picture.back.normal_displacement, view.back.mesh);
  write_both(path, view, MapSide(view.top, scaled(picture.top.normal_displacement, millimetres)),
             MapSide(view.back, scaled(picture.back.normal_displacement, millimetres)),
             deflection_content(picture.load), displacement_map());
}

void write_strength_map(const std::filesystem::path& path, const BodyView& view, const BodyLoadPicture& picture)
{
  check_size("write_strength_map", picture.top.strength_used, view.top.mesh);
  check_size("write_strength_map", picture.back.strength_used, view.back.mesh);
  const PlateView top = marked(view.top, picture.top.worst);
  const PlateView back = marked(view.back, picture.back.worst);
  write_both(path, view, MapSide(top, scaled(picture.top.strength_used, percent)),
             MapSide(back, scaled(picture.back.strength_used, percent)), strength_content(picture.load),
             strength_map());
}

} // namespace plate
