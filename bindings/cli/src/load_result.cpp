// SPDX-License-Identifier: MPL-2.0
#include "load_result.h"

#include "progress.h"
#include "stopwatch.h"

#include <plate/core/error.h>
#include <plate/design/build_model.h>

#include <utility>

namespace plate
{
namespace
{

LoadSetup setup_of(const Design& design, const LoadDesign& load, EdgeSupport rim)
{
  const double half = 0.5 * design.setup.bridge_feet;
  LoadSetup setup = {
      .strings = {.downforce = string_downforce(load.strings.tension, load.strings.angle),
                  .feet = {Eigen::Vector2d(design.setup.bridge_x, half), Eigen::Vector2d(design.setup.bridge_x, -half)},
                  .foot = load.strings.foot},
      .handling = {.thumb = load.handling.thumb,
                   .thumb_at = load.handling.thumb_at,
                   .knock = load.handling.knock,
                   .lift = load.handling.lift},
      .rim = rim,
      .cure_change = design.cure_change};
  if (load.soundpost)
    setup.posts.push_back({.region = EllipseRegion{.centre = load.soundpost->at,
                                                   .axes = Eigen::Vector2d::Constant(load.soundpost->diameter)},
                           .stiffness = load.soundpost->stiffness});
  return setup;
}

} // namespace

LoadResult compute_load(Design design, const LoadDesign& load, EdgeSupport rim)
{
  const Stopwatch watch;
  Progress progress;
  progress.show("meshing");
  Model model = build_model(design);
  LoadResult result = {.design = std::move(design),
                       .load = load,
                       .setup = {},
                       .model = std::move(model),
                       .mass = 0.0,
                       .study = {},
                       .knock_downs = {}};
  result.setup = setup_of(result.design, load, rim);
  progress.show("loading the plate");
  result.study = study_load(result.model, result.setup);
  result.mass = result.study.mass;
  for (const LoadCase& load_case : result.study.cases)
    result.knock_downs.push_back(
        knock_downs_of(load_case.strength.worst, result.model, duration_of(load_case.name), load.knock_downs));
  result.seconds = watch.seconds();
  return result;
}

double reduced_margin(const LoadResult& result, std::size_t load_case)
{
  return reduced(result.study.cases[load_case].strength.margin, result.knock_downs[load_case]);
}

std::vector<SharedCase> shared_cases(const LoadResult& result, const LoadResult& reference)
{
  return shared_cases(result, reference, [](const LoadCase& load) { return load.strength.margin; });
}

} // namespace plate
