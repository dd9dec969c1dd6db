// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/studies/load.h>

#include "bare_plate.h"
#include "load_places.h"
#include "rim_plate.h"

#include <plate/core/error.h>
#include <plate/post/surface_integral.h>

#include <algorithm>
#include <utility>

namespace plate
{

namespace
{

void find_most_moved(const ShellMesh& mesh, LoadCase& load)
{
  const Eigen::VectorXd normal = normal_displacement(mesh, load.displacements.topRows<3>());
  Eigen::Index node = 0;
  normal.cwiseAbs().maxCoeff(&node);
  load.most_moved = static_cast<std::size_t>(node);
  load.deflection = normal(node);
}

} // namespace

LoadStudy study_load(const Model& model, const LoadSetup& setup)
{
  LoadStudy study;
  add_rim_cases(model, setup, study);
  add_bare_cases(model, setup, study);
  std::vector<NodalUnknowns> states;
  for (LoadCase& load : study.cases)
  {
    find_most_moved(model.mesh, load);
    states.push_back(load.displacements);
  }
  std::vector<StrengthMap> maps = strength_maps(model, states, {.cure_change = setup.cure_change});
  for (std::size_t i = 0; i < maps.size(); ++i)
    study.cases[i].strength = std::move(maps[i]);
  return study;
}

} // namespace plate
