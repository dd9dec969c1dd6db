// SPDX-License-Identifier: MPL-2.0
#include "load_files.h"

#include "load_report.h"
#include "load_words.h"
#include "nodal_fields.h"
#include "text_table.h"

#include <plate/core/error.h>
#include <plate/meshes/load_picture.h>
#include <plate/meshes/vtk_file.h>
#include <plate/post/surface_integral.h>

#include <algorithm>
#include <future>

namespace plate
{
namespace
{

/// Name of a case in the name of a file.
std::string file_word(const LoadCase& load)
{
  std::string word = load.name;
  std::replace(word.begin(), word.end(), ' ', '_');
  return word;
}

VtkFields vtk_fields(const LoadResult& result)
{
  VtkFields fields{.nodal_scalars = {}, .nodal_vectors = {}, .cell_scalars = {bar_cells(result.model.mesh)}};
  for (const LoadCase& load : result.study.cases)
  {
    NodalVectors moved{.name = load.name + ", displacement m", .values = {}};
    for (Eigen::Index node = 0; node < load.displacements.cols(); ++node)
      moved.values.emplace_back(load.displacements.col(node).head<3>());
    fields.nodal_vectors.push_back(std::move(moved));
    fields.nodal_scalars.push_back({.name = load.name + ", strength used", .values = list_of(load.strength.used)});
  }
  return fields;
}

LoadPicture picture_of(const LoadResult& result, const LoadCase& load)
{
  const ShellMesh& mesh = result.model.mesh;
  const std::string margin = message("margin ", fixed(load.strength.margin, load.strength.margin < 10.0 ? 2 : 1));
  return {.load = case_words(load),
          .normal_displacement = list_of(normal_displacement(mesh, load.displacements.topRows<3>())),
          .strength_used = list_of(load.strength.used),
          .worst = {.at = mesh.nodes[load.strength.worst.node].head<2>(),
                    .label = margin,
                    .meaning = "where strength is used most"}};
}

void write_pictures(const OutputFolder& folder, const LoadResult& result, const std::string& ending)
{
  const PlateView view{.mesh = result.model.mesh, .title = result.design.title};
  for (const LoadCase& load : result.study.cases)
  {
    const LoadPicture picture = picture_of(result, load);
    write_deflection_map(folder.file("deflection_" + file_word(load) + ending), view, picture);
    write_strength_map(folder.file("strength_" + file_word(load) + ending), view, picture);
  }
}

} // namespace

void write_load_files(const OutputFolder& folder, const LoadOutcome& outcome, bool timing)
{
  folder.write("load.json", load_json(outcome, timing));
  folder.write("load.csv", load_csv(outcome));
  // The two formats share nothing but the data they read.
  std::future<void> svg = std::async(std::launch::async, [&] { write_pictures(folder, outcome.design, ".svg"); });
  write_vtu(folder.file("load.vtu"), outcome.design.model.mesh, vtk_fields(outcome.design));
  write_pictures(folder, outcome.design, ".png");
  svg.get();
}

} // namespace plate
