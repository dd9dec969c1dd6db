// SPDX-License-Identifier: MPL-2.0
#include "body_load_result.h"

#include "body_result.h"
#include "progress.h"
#include "stopwatch.h"

#include <plate/core/error.h>
#include <plate/meshes/outline.h>
#include <plate/meshes/thickness_map.h>

#include <algorithm>
#include <limits>
#include <utility>

namespace plate
{
namespace
{

BodyStrings strings_of(const BodyDesign& design, const BodyLoadDesign& load, const BodyModel& model)
{
  if (!model.end_blocks)
    throw InvalidInput("load: the strings pull at the blocks at both ends of a body, and this has none");
  const Setup& setup = design.top.setup;
  const double half = 0.5 * setup.bridge_feet;
  const double thickness = ThicknessField(design.top.geometry.outline, design.top.geometry.thickness)
                               .at(Eigen::Vector2d(setup.bridge_x, 0.0));
  return {.tension = design.strings.tension,
          .bend = design.strings.angle,
          .feet = {Eigen::Vector2d(setup.bridge_x, half), Eigen::Vector2d(setup.bridge_x, -half)},
          .foot = design.strings.foot,
          .height = load.bridge_height + 0.5 * thickness,
          .saddle = {-0.5 * outline_length(design.top.geometry.outline), 0.0, 0.0},
          .neck = {.part = model.end_blocks->part, .nodes = model.end_blocks->neck},
          .lower = {.part = model.end_blocks->part, .nodes = model.end_blocks->lower}};
}

BodyLoadSetup setup_of(const BodyDesign& design, const BodyLoadDesign& load, const BodyModel& model)
{
  BodyLoadSetup setup = {.top = BodyModel::top,
                         .back = BodyModel::back,
                         .strings = strings_of(design, load, model),
                         .handling = {.thumb = load.handling.thumb,
                                      .thumb_at = load.handling.thumb_at,
                                      .squeeze = load.handling.squeeze,
                                      .knock = load.handling.knock},
                         .cure_changes = std::vector<double>(model.body.parts.size(), 0.0),
                         .air = body_air(model, design)};
  setup.cure_changes[BodyModel::top] = design.top.cure_change;
  setup.cure_changes[BodyModel::back] = design.back.cure_change;
  return setup;
}

/// Parts of one name give one entry: that with the least margin.
std::vector<PartMargin> margins_of(const BodyLoadResult& result, std::size_t load_case)
{
  const BodyLoadCase& load = result.study.cases[load_case];
  std::vector<PartMargin> margins;
  for (std::size_t p = 0; p < load.parts.size(); ++p)
  {
    const BodyPart& part = result.model.body.parts[p];
    const std::optional<StrengthMap>& strength = load.parts[p].strength;
    if (!strength)
      continue;
    const PartMargin entry = {
        .name = part.name,
        .part = p,
        .knock_downs = knock_downs_of(strength->worst, part.model, duration_of(load.name), result.load.knock_downs)};
    const auto known = std::find_if(margins.begin(), margins.end(), [&](const auto& m) { return m.name == part.name; });
    if (known == margins.end())
      margins.push_back(entry);
    else if (strength->margin < strength_of(result, load_case, *known).margin)
      *known = entry;
  }
  return margins;
}

} // namespace

BodyLoadResult compute_load(BodyDesign design, const BodyLoadDesign& load)
{
  const Stopwatch watch;
  Progress progress;
  progress.show("meshing");
  BodyModel model = build_body(design);
  BodyLoadSetup setup = setup_of(design, load, model);
  BodyLoadResult result = {.design = std::move(design),
                           .load = load,
                           .setup = std::move(setup),
                           .model = std::move(model),
                           .study = {},
                           .margins = {}};
  progress.show("loading the body");
  result.study = study_load(result.model.body, result.setup);
  for (std::size_t i = 0; i < result.study.cases.size(); ++i)
    result.margins.push_back(margins_of(result, i));
  result.seconds = watch.seconds();
  return result;
}

const StrengthMap& strength_of(const BodyLoadResult& result, std::size_t load_case, const PartMargin& part)
{
  return *result.study.cases[load_case].parts[part.part].strength;
}

const PartMargin* worst_part(const BodyLoadResult& result, std::size_t load_case)
{
  const std::optional<std::size_t>& worst = result.study.cases[load_case].worst;
  for (const PartMargin& part : result.margins[load_case])
    if (worst && part.part == *worst)
      return &part;
  return nullptr;
}

double reduced_margin(const BodyLoadResult& result, std::size_t load_case)
{
  double least = std::numeric_limits<double>::infinity();
  for (const PartMargin& part : result.margins[load_case])
    least = std::min(least, reduced(strength_of(result, load_case, part).margin, part.knock_downs));
  return least;
}

Eigen::Vector3d place_of(const BodyModel& model, const PartNode& node)
{
  const BodyPart& part = model.body.parts[node.part];
  return part.placement * part.model.mesh.nodes[static_cast<std::size_t>(node.node)];
}

std::vector<SharedCase> shared_cases(const BodyLoadResult& result, const BodyLoadResult& reference)
{
  return shared_cases(result, reference, &BodyLoadCase::margin);
}

} // namespace plate
