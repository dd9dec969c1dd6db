// SPDX-License-Identifier: MPL-2.0
#include "sensitivity_report.h"

#include "design_pictures.h"
#include "nodal_fields.h"
#include "text_table.h"

#include <plate/core/error.h>
#include <plate/meshes/thickness_slope_picture.h>
#include <plate/meshes/vtk_file.h>
#include <plate/post/surface_integral.h>

#include <utility>
#include <vector>

namespace plate
{
namespace
{

std::string trade_label(const SensitivityOutcome& outcome, Eigen::Index mode)
{
  const std::string& name = outcome.names[static_cast<std::size_t>(mode)];
  return name.empty() ? message("mode ", mode + 1) : trade_name(name);
}

std::string map_label(const SensitivityOutcome& outcome, Eigen::Index mode)
{
  const std::string& name = outcome.names[static_cast<std::size_t>(mode)];
  return message("mode ", mode + 1, name.empty() ? "" : ", " + trade_name(name), ", ",
                 fixed(outcome.frequencies_hz(mode), 1), " Hz");
}

ThicknessSlopePicture map_picture(const SensitivityOutcome& outcome, const MappedPlate& plate, Eigen::Index mode)
{
  ThicknessSlopePicture picture = {.label = map_label(outcome, mode),
                                   .whole = nodal_areas(plate.model.mesh).dot(plate.slopes.col(mode)),
                                   .slopes = list_of(plate.slopes.col(mode))};
  if (outcome.leave && *outcome.leave != mode)
    picture.unmoved =
        UnmovedMode{.label = trade_label(outcome, *outcome.leave), .slopes = list_of(plate.slopes.col(*outcome.leave))};
  return picture;
}

VtkFields vtk_fields(const SensitivityOutcome& outcome, const MappedPlate& plate)
{
  constexpr double hz_per_mm_cm2 = 1e-7; // in Hz/(m m2)
  const ShellMesh& mesh = plate.model.mesh;
  VtkFields fields{.nodal_scalars = {thickness_field(mesh)}, .nodal_vectors = {}, .cell_scalars = {bar_cells(mesh)}};
  for (Eigen::Index mode = 0; mode < plate.slopes.cols(); ++mode)
  {
    NodalScalars slopes{.name = message(map_label(outcome, mode), ": Hz per mm and cm2"),
                        .values = list_of(plate.slopes.col(mode))};
    for (double& value : slopes.values)
      value *= hz_per_mm_cm2;
    fields.nodal_scalars.push_back(std::move(slopes));
  }
  return fields;
}

/// The view of a plate, or of the top or back of a body without its blocks and the bridge's feet.
PlateView view_of(const MappedPlate& plate)
{
  PlateView view = plate_view(plate.model, plate.title);
  view.regions.resize(plate.num_patches);
  if (plate.name == "top")
    view.points.clear();
  if (plate.name == "back")
    std::swap(view.left, view.right);
  return view;
}

} // namespace

void write_sensitivity_files(const OutputFolder& folder, const SensitivityOutcome& outcome, bool timing)
{
  folder.write("sensitivity.json", sensitivity_json(outcome, timing));
  folder.write("sensitivity.csv", sensitivity_csv(outcome));
  for (const MappedPlate& plate : outcome.plates)
  {
    const std::string end = plate.name.empty() ? "" : "_" + plate.name;
    write_vtu(folder.file(message("sensitivity", end, ".vtu")), plate.model.mesh, vtk_fields(outcome, plate));
    const PlateView view = view_of(plate);
    for (const Eigen::Index mode : outcome.maps)
      for (const char* ending : {".svg", ".png"})
        write_thickness_slope_map(folder.file(message("thickness_slopes_", two_digits(mode + 1), end, ending)), view,
                                  map_picture(outcome, plate, mode));
  }
}

} // namespace plate
