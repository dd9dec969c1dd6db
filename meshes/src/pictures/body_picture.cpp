// SPDX-License-Identifier: MPL-2.0
#include "mode_drawing.h"
#include "sheet.h"

#include <plate/core/error.h>
#include <plate/core/units.h>
#include <plate/meshes/body_picture.h>

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

// Picture units, from the top of a cell.
constexpr double name_at = 8.0;
constexpr double hertz_at = 21.0;
constexpr double share_at = 34.0;
constexpr double side_at = 48.0;
constexpr double plate_at = 56.0;
constexpr double between_plates = 8.0;
constexpr double gap = 22.0;

std::string heading(const BodyModePicture& mode)
{
  return mode_words({.number = mode.number, .frequency_hz = mode.frequency_hz, .name = mode.name});
}

std::string share_words(const BodyModePicture& mode)
{
  return "loss " + label_number(percent * mode.loss, 1) + " %, air " + label_number(percent * mode.air_share, 0) + " %";
}

void check(const BodyView& view, const BodyModePicture& mode)
{
  if (mode.top.size() != view.top.mesh.nodes.size() || mode.back.size() != view.back.mesh.nodes.size())
    throw InvalidInput(message("write_body_sheet: mode ", mode.number, " has ", mode.top.size(), " and ",
                               mode.back.size(), " values for plates of ", view.top.mesh.nodes.size(), " and ",
                               view.back.mesh.nodes.size(), " nodes; give one at each node"));
}

double greatest(const std::vector<double>& values)
{
  double most = 0.0;
  for (const double value : values)
    most = std::max(most, std::abs(value));
  return most;
}

/// Shapes of both plates on the scale of the one that moves most, which is drawn as picture_shape() has it.
struct BothShapes
{
  std::vector<double> top;
  std::vector<double> back;
};

BothShapes both_shapes(const BodyView& view, const BodyModePicture& mode)
{
  const bool top_leads = greatest(mode.top) >= greatest(mode.back);
  const std::vector<double>& leading = top_leads ? mode.top : mode.back;
  std::vector<double> first = picture_shape(top_leads ? view.top.mesh : view.back.mesh, leading);
  const auto most =
      std::max_element(leading.begin(), leading.end(), [](double a, double b) { return std::abs(a) < std::abs(b); });
  const double factor = first[static_cast<std::size_t>(most - leading.begin())] / *most;
  std::vector<double> second = top_leads ? mode.back : mode.top;
  for (double& value : second)
    value *= factor;
  return top_leads ? BothShapes{.top = std::move(first), .back = std::move(second)}
                   : BothShapes{.top = std::move(second), .back = std::move(first)};
}

class BodySheet
{
public:
  BodySheet(const BodyView& view, std::span<const BodyModePicture> modes)
      : view_(view), modes_(modes), top_(view.top, sheet_pieces), back_(view.back, sheet_pieces),
        air_(view.air, sheet_pieces), length_(std::max(top_.body_length(), back_.body_length())),
        shows_air_(std::any_of(modes.begin(), modes.end(), [](const auto& mode) { return !mode.pressure.empty(); }))
  {
    const double width = std::max(top_.body_width(), back_.body_width());
    const double plates = shows_air_ ? 3.0 : 2.0;
    grid_ = fit_grid(modes.size(), {.plates = plates,
                                    .aspect = width / length_,
                                    .around = {(plates - 1.0) * between_plates + gap, plate_at + gap},
                                    .least_width = 150.0});
  }

  void write(const std::filesystem::path& path)
  {
    const ModeStyle style = style_for_height(grid_.plate[1]);
    Sheet sheet{.title = view_.top.title,
                .lines = {"both plates from outside, outward positive, on one scale; neck end up"},
                .legend = mode_legend(top_, style)};
    sheet.legend.add(back_.legend_items(style.plate));
    sheet.legend.add({scale_item(grid_.plate[1] / length_),
                      note_item("top and air: " + view_.top.left + " left; back: " + view_.back.left + " left")});
    if (shows_air_)
      sheet.legend.add({note_item("air: pressure on a scale of its own, where it has a share of the energy")});
    write_sheet(path, sheet, grid_, modes_.size(),
                [&](Canvas& canvas, std::size_t i, const Eigen::Vector2d& corner) { draw_cell(canvas, i, corner); });
  }

private:
  void draw_cell(Canvas& canvas, std::size_t i, const Eigen::Vector2d& corner) const
  {
    const BodyModePicture& mode = modes_[i];
    const double middle = corner[0] + 0.5 * grid_.cell[0];
    canvas.text({middle, corner[1] + name_at}, heading(mode), cell_name_style);
    canvas.text({middle, corner[1] + hertz_at}, hertz(mode.frequency_hz), cell_number_style);
    canvas.text({middle, corner[1] + share_at}, share_words(mode), cell_number_style);
    const BothShapes shapes = both_shapes(view_, mode);
    const double step = grid_.plate[0] + between_plates;
    const double first = middle - (shows_air_ ? step : 0.5 * step);
    draw_side(canvas, top_, shapes.top, {first, corner[1]}, "top");
    draw_side(canvas, back_, shapes.back, {first + step, corner[1]}, "back");
    if (!mode.pressure.empty())
      draw_side(canvas, air_, picture_shape(view_.air.mesh, mode.pressure), {first + 2.0 * step, corner[1]}, "air");
  }

  void draw_side(Canvas& canvas, const PlateDrawing& drawing, const std::vector<double>& shape,
                 const Eigen::Vector2d& top, const std::string& words) const
  {
    canvas.text(top + Eigen::Vector2d(0.0, side_at), words, cell_number_style);
    Frame frame = drawing.fit(top + Eigen::Vector2d(-0.5 * grid_.plate[0], plate_at), grid_.plate);
    frame.scale = grid_.plate[1] / length_;
    draw_mode(canvas, drawing, frame, shape, style_for_height(grid_.plate[1]));
  }

  const BodyView& view_;
  std::span<const BodyModePicture> modes_;
  PlateDrawing top_;
  PlateDrawing back_;
  PlateDrawing air_;
  double length_; ///< of the longer plate [m]
  bool shows_air_;
  SheetGrid grid_;
};

} // namespace

void write_body_sheet(const std::filesystem::path& path, const BodyView& view, std::span<const BodyModePicture> modes)
{
  if (modes.empty())
    throw InvalidInput("write_body_sheet: there are no modes to show; compute at least one");
  for (const BodyModePicture& mode : modes)
    check(view, mode);
  BodySheet(view, modes).write(path);
}

} // namespace plate
