// SPDX-License-Identifier: MPL-2.0
#include "body_files.h"

#include "body_comparison.h"
#include "body_curves.h"
#include "body_report.h"
#include "design_pictures.h"
#include "nodal_fields.h"

#include <plate/core/error.h>
#include <plate/meshes/body_picture.h>
#include <plate/meshes/vtk_file.h>

#include <algorithm>
#include <future>

namespace plate
{
namespace
{

constexpr double least_shown_air = 0.05; // share of the energy from which the pressure is drawn

std::string label_of(const BodyResult& result, std::size_t mode)
{
  const std::optional<BodyModeName> name = name_of(result, mode);
  return mode_field_name(static_cast<Eigen::Index>(mode) + 1, result.traits[mode].frequency_hz, name ? name->name : "");
}

std::vector<BodyModePicture> mode_pictures(const BodyResult& result)
{
  const Eigen::MatrixXd top = outward_shapes(result, BodyModel::top);
  const Eigen::MatrixXd back = outward_shapes(result, BodyModel::back);
  const Eigen::VectorXd loss = result.modes.coupled.loss();
  std::vector<BodyModePicture> out;
  for (std::size_t i = 0; i < result.traits.size(); ++i)
  {
    const auto mode = static_cast<Eigen::Index>(i);
    const std::optional<BodyModeName> name = name_of(result, i);
    BodyModePicture& picture = out.emplace_back(BodyModePicture{.number = static_cast<int>(i + 1),
                                                                .frequency_hz = result.traits[i].frequency_hz,
                                                                .name = name ? name->name : "",
                                                                .loss = loss(mode),
                                                                .air_share = result.traits[i].air_share,
                                                                .top = list_of(top.col(mode)),
                                                                .back = list_of(back.col(mode))});
    if (result.traits[i].air_share >= least_shown_air)
      picture.pressure = list_of(result.modes.pressures.col(mode));
  }
  return out;
}

BodyView body_view(const BodyResult& result)
{
  const auto view = [&](std::size_t part, const Design& design)
  { return body_plate_view(result.model.body.parts[part], design, result.design.title); };
  return {.top = view(BodyModel::top, result.design.top),
          .back = view(BodyModel::back, result.design.back),
          .air = {.mesh = result.model.cavity.planform}};
}

/// Shapes of a part in the axes of the body, the largest displacement of the whole mode 1.
VtkFields part_fields(const BodyResult& result, std::size_t part, const Eigen::VectorXd& scale)
{
  const PartSystem& system = result.system.parts[part];
  const Eigen::Matrix3d turn = result.model.body.parts[part].placement.linear();
  VtkFields fields;
  for (std::size_t i = 0; i < result.traits.size(); ++i)
  {
    const auto mode = static_cast<Eigen::Index>(i);
    const Eigen::Matrix3Xd u =
        scale(mode) * (turn * nodal_displacements(system.dofs, system.from_body * result.modes.shapes.col(mode)));
    NodalVectors shape{.name = label_of(result, i), .values = {}};
    for (Eigen::Index node = 0; node < u.cols(); ++node)
      shape.values.emplace_back(u.col(node));
    fields.nodal_vectors.push_back(std::move(shape));
  }
  return fields;
}

/// One over the largest displacement of each mode.
Eigen::VectorXd shape_scales(const BodyResult& result)
{
  Eigen::VectorXd most = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(result.traits.size()));
  for (const PartSystem& part : result.system.parts)
    for (Eigen::Index mode = 0; mode < most.size(); ++mode)
      most(mode) = std::max(
          most(mode),
          nodal_displacements(part.dofs, part.from_body * result.modes.shapes.col(mode)).colwise().norm().maxCoeff());
  return most.cwiseInverse();
}

ShellMesh placed(const BodyPart& part)
{
  ShellMesh mesh = part.model.mesh;
  for (Eigen::Vector3d& node : mesh.nodes)
    node = part.placement * node;
  for (Eigen::Vector3d& normal : mesh.normals)
    normal = part.placement.linear() * normal;
  return mesh;
}

void write_vtk_files(const OutputFolder& folder, const BodyResult& result)
{
  const Eigen::VectorXd scale = shape_scales(result);
  const std::vector<BodyPart>& parts = result.model.body.parts;
  for (std::size_t p = 0; p < parts.size(); ++p)
  {
    const auto same = std::count_if(parts.begin(), parts.begin() + static_cast<std::ptrdiff_t>(p),
                                    [&](const BodyPart& other) { return other.name == parts[p].name; });
    const std::string number = same > 0 ? "_" + std::to_string(same + 1) : "";
    write_vtu(folder.file(parts[p].name + number + ".vtu"), placed(parts[p]), part_fields(result, p, scale));
  }
  VtkFields air;
  for (std::size_t i = 0; i < result.traits.size(); ++i)
    air.nodal_scalars.push_back({.name = label_of(result, i) + ", pressure",
                                 .values = list_of(result.modes.pressures.col(static_cast<Eigen::Index>(i)))});
  write_vtu(folder.file("air.vtu"), result.model.cavity.planform, air);
}

} // namespace

void write_body_files(const OutputFolder& folder, const BodyOutcome& outcome, bool timing)
{
  folder.write("body.json", body_json(outcome, timing));
  folder.write("body.csv", body_csv(outcome.body));
  folder.write("mobility.csv", mobility_csv(outcome));
  folder.write("radiation.csv", radiation_csv(outcome));
  if (outcome.reference)
  {
    folder.write("reference_body.csv", body_csv(*outcome.reference));
    folder.write("beside_reference.csv", comparison_csv(outcome.body, *outcome.reference));
  }
  const LevelPicture mobility = mobility_picture(outcome);
  const LevelPicture radiation = radiation_picture(outcome);
  const auto write_pictures = [&](const std::string& ending)
  {
    write_body_sheet(folder.file("modes" + ending), body_view(outcome.body), mode_pictures(outcome.body));
    if (outcome.reference)
      write_body_sheet(folder.file("reference_modes" + ending), body_view(*outcome.reference),
                       mode_pictures(*outcome.reference));
    write_level_picture(folder.file("mobility" + ending), mobility);
    write_level_picture(folder.file("radiation" + ending), radiation);
  };
  // The two formats share nothing but the data they read.
  std::future<void> svg = std::async(std::launch::async, [&] { write_pictures(".svg"); });
  write_vtk_files(folder, outcome.body);
  write_pictures(".png");
  svg.get();
}

} // namespace plate
