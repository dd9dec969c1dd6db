// SPDX-License-Identifier: MPL-2.0
#include "body_load_report.h"

#include "json_text.h"
#include "load_json_parts.h"
#include "load_words.h"
#include "text_table.h"

#include <plate/core/units.h>

#include <cmath>
#include <numbers>

namespace plate
{
namespace
{

double degrees(double radians)
{
  return radians * 180.0 / std::numbers::pi;
}

Json place_json(const Eigen::Vector3d& at)
{
  return {rounded(at.x() * millimetres), rounded(at.y() * millimetres), rounded(at.z() * millimetres)};
}

Json part_json(const BodyLoadResult& result, std::size_t load_case, const PartMargin& part)
{
  const StrengthMap& strength = strength_of(result, load_case, part);
  const StrengthPlace& worst = strength.worst;
  return {{"part", part.name},
          {"margin", finite(strength.margin)},
          {"reduced_margin", finite(reduced(strength.margin, part.knock_downs))},
          {"knock_downs", factors_json(part.knock_downs)},
          {"where", place_json(place_of(result.model, {.part = part.part, .node = static_cast<int>(worst.node)}))},
          {"ply", worst.ply},
          {"material", worst.material == nullptr ? Json(nullptr) : Json(worst.material->name)},
          {"gives_way", words(worst.mode)},
          {"stress_mpa", stress_json(worst.stress)}};
}

Json case_json(const BodyLoadResult& result, std::size_t i)
{
  const BodyLoadCase& load = result.study.cases[i];
  Json json = {{"case", load.name},
               {"description", case_words(load)},
               {"at_mm", place_json(load.at)},
               {"force_n", rounded(load.force)},
               {"deflection_mm", rounded(load.deflection * millimetres)},
               {"deflection_part", result.model.body.parts[load.most_moved.part].name},
               {"deflection_at_mm", place_json(place_of(result.model, load.most_moved))}};
  Json posts = Json::array();
  for (const double force : load.post_forces)
    posts.push_back(rounded(force));
  json["soundpost_n"] = posts;
  if (const PartMargin* worst = worst_part(result, i))
    json.update(part_json(result, i, *worst));
  json["reduced_margin"] = finite(reduced_margin(result, i));
  Json parts = Json::array();
  for (const PartMargin& part : result.margins[i])
    parts.push_back(part_json(result, i, part));
  json["parts"] = parts;
  if (load.name == "strings")
    json["buckling_factor"] =
        result.study.buckling.factors.size() > 0 ? Json(rounded(result.study.buckling.factors(0))) : Json(nullptr);
  json["energy_j"] = rounded(load.evidence.energy);
  json["work_j"] = rounded(load.evidence.work);
  json["inertia"] = rounded(load.inertia);
  json["in_equilibrium"] = in_equilibrium(load.evidence, load.balance_error);
  return json;
}

Json strings_json(const BodyLoadResult& result)
{
  const BodyLoadStudy& study = result.study;
  Json posts = Json::array();
  const std::vector<double>& forces = study.cases.front().post_forces;
  for (std::size_t i = 0; i < forces.size(); ++i)
    posts.push_back({{"force_n", rounded(forces[i])},
                     {"share", rounded(post_share(study, i))},
                     {"top_deflection_mm", rounded(study.post_deflections[i][0] * millimetres)},
                     {"back_deflection_mm", rounded(study.post_deflections[i][1] * millimetres)}});
  Json feet = Json::array();
  for (const double deflection : study.foot_deflections)
    feet.push_back(rounded(deflection * millimetres));
  return {{"tension_n", rounded(result.design.strings.tension)},
          {"angle_degrees", rounded(degrees(result.design.strings.angle.in_radians()))},
          {"neck_angle_degrees", rounded(degrees(std::asin(-study.path.to_neck.z())))},
          {"crest_mm", place_json(study.path.crest)},
          {"downforce_n", rounded(study.downforce)},
          {"foot_deflections_mm", feet},
          {"soundpost", posts},
          {"top_edge_n", rounded(edge_force(study))}};
}

Json design_json(const BodyLoadResult& result, bool timing)
{
  const std::vector<const Model*> models = models_of(result.model);
  Json cases = Json::array();
  for (std::size_t i = 0; i < result.study.cases.size(); ++i)
    cases.push_back(case_json(result, i));
  Json json = {{"title", result.design.title},
               {"mass_g", rounded(result.study.mass * grams)},
               {"strings", strings_json(result)},
               {"cases", cases},
               {"buckling_factors", numbers(result.study.buckling.factors)},
               {"modes_with_air", true},
               {"frequencies_hz", numbers(result.study.frequencies_hz)},
               {"loaded_frequencies_hz", numbers(result.study.loaded_frequencies_hz)},
               {"strengths", strengths_json(models)},
               {"without_strength", not_judged(models)},
               {"knock_downs", knock_downs_json(result.load.knock_downs)}};
  if (timing)
    json["seconds"] = {{"total", result.seconds}};
  return json;
}

} // namespace

std::string load_json(const BodyLoadOutcome& outcome, bool timing)
{
  Json json = design_json(outcome.design, timing);
  if (outcome.reference)
  {
    json["reference"] = design_json(*outcome.reference, timing);
    json["beside_reference"] = comparison_json(shared_cases(outcome.design, *outcome.reference));
  }
  json["notes"] = body_load_notes();
  json["cautions"] = load_cautions();
  return json_text(json);
}

} // namespace plate
