// SPDX-License-Identifier: MPL-2.0
#include "mode_drawing.h"
#include "plate_page.h"

#include <plate/core/error.h>
#include <plate/meshes/picture.h>

namespace plate
{

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

std::string trade_name(const std::string& name)
{
  if (name == "M1")
    return "M1 twist";
  if (name == "M2")
    return "M2 X";
  return name == "M5" ? "M5 ring" : name;
}

void write_mode_picture(const std::filesystem::path& path, const PlateView& view, const ModeShapePicture& mode)
{
  const PlateDrawing drawing(view);
  const std::vector<double> shape = picture_shape(view.mesh, mode.normal_displacement);
  write_plate_page(path, view, drawing,
                   {.headline = "Mode " + mode_words(mode) + " \u00b7 " + hertz(mode.frequency_hz),
                    .subline = loss_words(mode),
                    .legend = mode_legend(drawing, {})},
                   [&](Canvas& canvas, const Frame& frame) { draw_mode(canvas, drawing, frame, shape, {}); });
}

} // namespace plate
