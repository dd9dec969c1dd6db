// SPDX-License-Identifier: MPL-2.0
#include "mode_drawing.h"

#include <plate/core/error.h>
#include <plate/meshes/picture.h>

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

constexpr double margin = 26.0;

/// Size of the page area that a plate may fill: a fixed height, or less where a wide plate would become too wide.
Eigen::Vector2d plate_size(const PlateDrawing& drawing, double height, double greatest_width)
{
  const double scale = std::min(height / drawing.body_length(), greatest_width / drawing.body_width());
  return scale * Eigen::Vector2d(drawing.body_width(), drawing.body_length());
}

std::string hertz(double frequency_hz)
{
  return label_number(frequency_hz, 1) + " Hz";
}

} // namespace

std::vector<double> normal_displacement(const ShellMesh& mesh, std::span<const Eigen::Vector3d> field)
{
  if (field.size() != mesh.normals.size())
    throw InvalidInput(message("normal_displacement: the field has ", field.size(), " vectors, the mesh ",
                               mesh.normals.size(), " normals; was it computed on another mesh?"));
  std::vector<double> normal;
  for (std::size_t i = 0; i < field.size(); ++i)
    normal.push_back(field[i].dot(mesh.normals[i]));
  return normal;
}

void write_mode_picture(const std::filesystem::path& path, const PlateView& view, const ModeShapePicture& mode)
{
  const PlateDrawing drawing(view);
  const std::vector<double> shape = picture_shape(view.mesh, mode.normal_displacement);
  const Eigen::Vector2d size = plate_size(drawing, 430.0, 420.0);
  constexpr double top = 68.0;
  constexpr double legend_height = 82.0;
  const double width = std::max(size[0] + 2.0 * margin, 340.0);
  Canvas canvas(path, {width, top + size[1] + legend_height});

  canvas.text({0.5 * width, 14.0}, view.title, {.size = 9.5, .colour = grey, .align = Align::centre});
  const std::string name = mode.name.empty() ? "" : "  " + mode.name;
  canvas.text({0.5 * width, 34.0},
              "Mode " + std::to_string(mode.number) + "   " + hertz(mode.frequency_hz) + " " + name,
              {.size = 16.0, .bold = true, .align = Align::centre});

  const Frame frame = drawing.fit({0.5 * (width - size[0]), top}, size);
  draw_directions(canvas, view, frame, size[0], size[1]);
  draw_mode(canvas, drawing, frame, shape, {});

  const double below = top + size[1] + 18.0;
  draw_colour_bar(canvas, displacement_bar(), {0.5 * width - 145.0, below}, 165.0);
  const double keys = 0.5 * width + 50.0;
  draw_line_key(canvas, {keys, below + 3.0}, {.width = 2.4}, "nodal line");
  draw_bar_key(canvas, drawing, {keys, below + 18.0});
  draw_scale_bar(canvas, frame, {keys, below + 34.0});
  canvas.write();
}

void write_contact_sheet(const std::filesystem::path& path, const PlateView& view,
                         std::span<const ModeShapePicture> modes)
{
  if (modes.empty())
    throw InvalidInput("write_contact_sheet: there are no modes to show; compute at least one");
  const PlateDrawing drawing(view, 200);
  const Eigen::Vector2d size = plate_size(drawing, 190.0, 220.0);
  constexpr double gap = 22.0;
  constexpr double caption = 34.0;
  constexpr double top = 40.0;
  const Eigen::Vector2d cell = size + Eigen::Vector2d(gap, gap + caption);
  // Columns for a sheet about 1.4 times as wide as high.
  const auto count = static_cast<double>(modes.size());
  const double columns_wanted = std::round(std::sqrt(1.4 * count * cell[1] / cell[0]));
  const auto columns = static_cast<std::size_t>(std::clamp(columns_wanted, 1.0, count));
  const std::size_t rows = (modes.size() + columns - 1) / columns;
  const double width = std::max(static_cast<double>(columns) * cell[0] + gap, 420.0);
  const double height = top + static_cast<double>(rows) * cell[1] + 66.0;
  Canvas canvas(path, {width, height});

  canvas.text({0.5 * width, 18.0}, view.title, {.size = 13.0, .bold = true, .align = Align::centre});
  const double left = 0.5 * (width - static_cast<double>(columns) * cell[0]);
  Frame frame;
  for (std::size_t i = 0; i < modes.size(); ++i)
  {
    const Eigen::Vector2d corner(left + static_cast<double>(i % columns) * cell[0],
                                 top + static_cast<double>(i / columns) * cell[1]);
    const double middle = corner[0] + 0.5 * cell[0];
    const std::string name = modes[i].name.empty() ? "" : "   " + modes[i].name;
    canvas.text({middle, corner[1] + 8.0}, std::to_string(modes[i].number) + name,
                {.size = 11.0, .bold = true, .align = Align::centre});
    canvas.text({middle, corner[1] + 23.0}, hertz(modes[i].frequency_hz), {.size = 10.5, .align = Align::centre});
    frame = drawing.fit(corner + Eigen::Vector2d(0.5 * gap, caption), size);
    draw_mode(canvas, drawing, frame, picture_shape(view.mesh, modes[i].normal_displacement),
              style_for_height(size[1]));
  }
  const double below = height - 56.0;
  draw_colour_bar(canvas, displacement_bar(), {0.5 * width - 190.0, below}, 180.0);
  draw_scale_bar(canvas, frame, {0.5 * width + 40.0, below + 6.0});
  canvas.text({0.5 * width + 40.0, below + 26.0}, view.up + " up, " + view.left + " left",
              {.size = 9.0, .colour = grey});
  canvas.write();
}

} // namespace plate
