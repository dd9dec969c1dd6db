// SPDX-License-Identifier: MPL-2.0
#include "body_load_files.h"

#include "body_load_report.h"
#include "body_view.h"
#include "load_text_parts.h"
#include "nodal_fields.h"
#include "part_files.h"

#include <plate/core/error.h>
#include <plate/meshes/body_load_picture.h>
#include <plate/meshes/vtk_file.h>
#include <plate/post/surface_integral.h>

#include <future>

namespace plate
{
namespace
{

/// Displacements and strengths used of a part in all cases.
VtkFields part_fields(const BodyLoadResult& result, std::size_t part)
{
  const Eigen::Matrix3d turn = result.model.body.parts[part].placement.linear();
  VtkFields fields;
  for (const BodyLoadCase& load : result.study.cases)
  {
    const PartLoad& state = load.parts[part];
    NodalVectors moved{.name = load.name + ", displacement m", .values = {}};
    for (Eigen::Index node = 0; node < state.displacements.cols(); ++node)
      moved.values.emplace_back(turn * state.displacements.col(node).head<3>());
    fields.nodal_vectors.push_back(std::move(moved));
    if (state.strength)
      fields.nodal_scalars.push_back({.name = load.name + ", strength used", .values = list_of(state.strength->used)});
  }
  return fields;
}

LoadPicture plate_picture(const BodyLoadResult& result, const BodyLoadCase& load, std::size_t part)
{
  const ShellMesh& mesh = result.model.body.parts[part].model.mesh;
  const PartLoad& state = load.parts[part];
  LoadPicture picture{.load = {},
                      .normal_displacement = list_of(normal_displacement(mesh, state.displacements.topRows<3>()))};
  if (!state.strength) // not judged: nothing used
  {
    picture.strength_used.assign(mesh.nodes.size(), 0.0);
    return picture;
  }
  picture.strength_used = list_of(state.strength->used);
  picture.worst = {.at = mesh.nodes[state.strength->worst.node].head<2>(),
                   .label = message("margin ", margin_text(state.strength->margin)),
                   .meaning = "where strength is used most"};
  return picture;
}

void write_pictures(const OutputFolder& folder, const BodyLoadResult& result, const std::string& ending)
{
  const BodyView view = body_view(result.model, result.design);
  for (const BodyLoadCase& load : result.study.cases)
  {
    const BodyLoadPicture picture = {.load = case_words(load),
                                     .top = plate_picture(result, load, BodyModel::top),
                                     .back = plate_picture(result, load, BodyModel::back)};
    write_deflection_map(folder.file("deflection_" + load.name + ending), view, picture);
    write_strength_map(folder.file("strength_" + load.name + ending), view, picture);
  }
}

} // namespace

void write_load_files(const OutputFolder& folder, const BodyLoadOutcome& outcome, bool timing)
{
  folder.write("load.json", load_json(outcome, timing));
  folder.write("load.csv", load_csv(outcome));
  // The two formats share nothing but the data they read.
  std::future<void> svg = std::async(std::launch::async, [&] { write_pictures(folder, outcome.design, ".svg"); });
  write_part_files(folder, outcome.design.model.body,
                   [&](std::size_t part) { return part_fields(outcome.design, part); });
  write_pictures(folder, outcome.design, ".png");
  svg.get();
}

} // namespace plate
