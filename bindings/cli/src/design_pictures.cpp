// SPDX-License-Identifier: MPL-2.0
#include "design_pictures.h"

#include "body_view.h"
#include "nodal_fields.h"

#include <plate/core/error.h>
#include <plate/core/units.h>

#include <cstddef>
#include <vector>

namespace plate
{
namespace
{

std::vector<ModeShapePicture> mode_pictures(const ModesResult& result)
{
  std::vector<ModeShapePicture> pictures;
  for (Eigen::Index mode = 0; mode < result.normal_shapes.cols(); ++mode)
  {
    pictures.push_back({.number = static_cast<int>(mode + 1),
                        .frequency_hz = result.modal.frequencies_hz[mode],
                        .name = result.names[static_cast<std::size_t>(mode)],
                        .loss = result.losses[mode],
                        .normal_displacement = list_of(result.normal_shapes.col(mode))});
  }
  return pictures;
}

} // namespace

PlateView plate_view(const Model& model, const std::string& title)
{
  PlateView view{.mesh = model.mesh, .title = title};
  for (std::size_t i = 0; i < model.patches.size(); ++i)
    view.regions.push_back(
        {.outline = edge_of(model.patches[i].region),
         .label = message("patch ", i + 1, model.patches[i].side == PlateSide::inside ? ", inside" : ", outside")});
  for (const PointMass& mass : model.masses)
    view.points.push_back({.at = mass.at, .label = message(mass.mass * grams, " g")});
  return view;
}

DesignModes design_modes(const ModesResult& result)
{
  return {.view = plate_view(result.model, result.design.title),
          .mass = result.system.mass,
          .modes = mode_pictures(result)};
}

DesignModes body_plate_modes(const BodyResult& result, std::size_t part)
{
  const BodyPart& wall = result.model.body.parts[part];
  const Design& design = part == BodyModel::top ? result.design.top : result.design.back;
  DesignModes out{.view = body_plate_view(wall, design, message(result.design.title, ", ", wall.name)),
                  .mass = result.system.parts[part].mass};
  const Eigen::MatrixXd shapes = outward_shapes(result, part);
  const Eigen::VectorXd loss = result.modes.coupled.loss();
  for (std::size_t i = 0; i < result.traits.size(); ++i)
  {
    const auto mode = static_cast<Eigen::Index>(i);
    const std::optional<BodyModeName> name = name_of(result, i);
    out.modes.push_back({.number = static_cast<int>(i + 1),
                         .frequency_hz = result.traits[i].frequency_hz,
                         .name = name ? name->name : "",
                         .loss = loss(mode),
                         .normal_displacement = list_of(shapes.col(mode))});
  }
  return out;
}

} // namespace plate
