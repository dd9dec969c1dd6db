// SPDX-License-Identifier: MPL-2.0
#include "modes_files.h"

#include "design_pictures.h"
#include "modes_report.h"
#include "nodal_fields.h"
#include "pair_modes.h"

#include <plate/core/error.h>
#include <plate/laminates/section.h>
#include <plate/meshes/picture.h>
#include <plate/meshes/side_by_side_picture.h>
#include <plate/meshes/vtk_file.h>

#include <Eigen/Geometry>

#include <cmath>
#include <cstddef>
#include <future>
#include <optional>

namespace plate
{
namespace
{

/// Fibre direction of the outermost ply at each node.
NodalVectors fibre_direction(const Model& model)
{
  const Ply& ply = model.material.laminate.plies.back();
  const MaterialAxes& axes = model.material.axes;
  const double c = std::cos(ply.angle.in_radians());
  const double s = std::sin(ply.angle.in_radians());
  NodalVectors out{.name = "fibre direction, outermost ply", .values = {}};
  for (const Eigen::Vector3d& normal : model.mesh.normals)
  {
    const Eigen::Matrix3d frame = shell_frame(normal, axes);
    const Eigen::Vector3d laid = c * frame.col(0) + s * frame.col(1);
    const Eigen::Vector3d carved = c * axes.axis + s * axes.up.cross(axes.axis);
    out.values.push_back(ply.grain == Grain::carved ? carved : laid);
  }
  return out;
}

/// Displacement of a mode, largest length 1, positive outward where the plate moves most.
NodalVectors mode_field(const ModesResult& result, Eigen::Index mode)
{
  const Eigen::Matrix3Xd u = nodal_displacements(result.system.dofs, result.modal.shapes.col(mode));
  Eigen::Index most = 0;
  result.normal_shapes.col(mode).cwiseAbs().maxCoeff(&most);
  const double sign = result.normal_shapes(most, mode) < 0.0 ? -1.0 : 1.0;
  const double scale = sign / u.colwise().norm().maxCoeff();
  NodalVectors out{.name = mode_field_name(mode + 1, result.modal.frequencies_hz[mode],
                                           result.names[static_cast<std::size_t>(mode)]),
                   .values = {}};
  for (Eigen::Index node = 0; node < u.cols(); ++node)
    out.values.emplace_back(scale * u.col(node));
  return out;
}

VtkFields vtk_fields(const ModesResult& result)
{
  const ShellMesh& mesh = result.model.mesh;
  VtkFields fields{.nodal_scalars = {thickness_field(mesh)},
                   .nodal_vectors = {fibre_direction(result.model)},
                   .cell_scalars = {bar_cells(mesh)}};
  for (Eigen::Index mode = 0; mode < result.modal.shapes.cols(); ++mode)
    fields.nodal_vectors.push_back(mode_field(result, mode));
  return fields;
}

/// What is drawn in each format.
struct Pictures
{
  DesignModes design;
  std::optional<DesignModes> beside;
  std::vector<ModePair> pairs; ///< of modes of both
};

Pictures pictures_of(const ModesOutcome& outcome)
{
  Pictures pictures{.design = design_modes(outcome.design), .beside = {}, .pairs = {}};
  if (outcome.beside)
  {
    pictures.beside.emplace(design_modes(*outcome.beside));
    pictures.pairs = pair_modes(outcome.design.names, outcome.beside->names);
  }
  return pictures;
}

void write_pictures(const OutputFolder& folder, const Pictures& pictures, const std::string& ending)
{
  const auto& [view, mass, modes] = pictures.design;
  for (const ModeShapePicture& mode : modes)
    write_mode_picture(folder.file("mode_" + two_digits(mode.number) + ending), view, mode);
  write_contact_sheet(folder.file("modes" + ending), view, modes);
  write_thickness_map(folder.file("thickness" + ending), view);
  write_arching_map(folder.file("arching" + ending), view);
  if (pictures.beside)
    write_side_by_side(folder.file("side_by_side" + ending), pictures.design, *pictures.beside, pictures.pairs);
}

} // namespace

void write_modes_files(const OutputFolder& folder, const ModesOutcome& outcome, bool timing)
{
  const ModesResult& result = outcome.design;
  folder.write("modes.json", modes_json(outcome, timing));
  folder.write("modes.csv", modes_csv(result));
  const Pictures pictures = pictures_of(outcome);
  // Drawing takes longer than solving; the two formats share nothing but the data they read.
  std::future<void> svg = std::async(std::launch::async, [&] { write_pictures(folder, pictures, ".svg"); });
  write_vtu(folder.file("plate.vtu"), result.model.mesh, vtk_fields(result));
  write_pictures(folder, pictures, ".png");
  svg.get();
}

} // namespace plate
