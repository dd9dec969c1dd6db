// SPDX-License-Identifier: MPL-2.0
#include "body_load_files.h"

#include "body_load_report.h"
#include "nodal_fields.h"
#include "part_files.h"

#include <plate/meshes/vtk_file.h>

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

} // namespace

void write_load_files(const OutputFolder& folder, const BodyLoadOutcome& outcome, bool timing)
{
  folder.write("load.json", load_json(outcome, timing));
  folder.write("load.csv", load_csv(outcome));
  write_part_files(folder, outcome.design.model.body,
                   [&](std::size_t part) { return part_fields(outcome.design, part); });
}

} // namespace plate
