// SPDX-License-Identifier: MPL-2.0
#include "load_report.h"

#include "json_text.h"
#include "load_json_parts.h"
#include "load_words.h"
#include "text_table.h"

#include <array>
#include <numbers>

namespace plate
{
namespace
{

Json case_json(const LoadResult& result, std::size_t i)
{
  const LoadCase& load = result.study.cases[i];
  const StrengthPlace& worst = load.strength.worst;
  const ShellMesh& mesh = result.model.mesh;
  Json json = {{"case", load.name},
               {"description", case_words(load)},
               {"bare", load.bare},
               {"at_mm", place_json(load.at)},
               {"force_n", rounded(load.force)},
               {"deflection_mm", rounded(load.deflection * millimetres)},
               {"deflection_at_mm", place_json(mesh.nodes[load.most_moved].head<2>())},
               {"margin", finite(load.strength.margin)},
               {"reduced_margin", finite(reduced_margin(result, i))},
               {"knock_downs", factors_json(result.knock_downs[i])},
               {"where", place_json(mesh.nodes[worst.node].head<2>())},
               {"ply", worst.ply},
               {"material", worst.material == nullptr ? Json(nullptr) : Json(worst.material->name)},
               {"gives_way", words(worst.mode)},
               {"stress_mpa", stress_json(worst.stress)}};
  if (load.name == "strings")
    json["buckling_factor"] =
        result.study.buckling.factors.size() > 0 ? Json(rounded(result.study.buckling.factors(0))) : Json(nullptr);
  json["energy_j"] = rounded(load.evidence.energy);
  json["work_j"] = rounded(load.evidence.work);
  json["in_equilibrium"] = in_equilibrium(load.evidence, load.balance_error);
  return json;
}

Json strings_json(const LoadResult& result)
{
  const Strings& strings = result.load.strings;
  Json posts = Json::array();
  for (const double force : result.study.post_forces)
    posts.push_back(rounded(force));
  Json feet = Json::array();
  for (const double deflection : result.study.foot_deflections)
    feet.push_back(rounded(deflection * millimetres));
  return {{"tension_n", rounded(strings.tension)},
          {"angle_degrees", rounded(strings.angle.in_radians() * 180.0 / std::numbers::pi)},
          {"downforce_n", rounded(result.setup.strings.downforce)},
          {"foot_deflections_mm", feet},
          {"soundpost_n", posts}};
}

Json design_json(const LoadResult& result, bool timing)
{
  Json cases = Json::array();
  for (std::size_t i = 0; i < result.study.cases.size(); ++i)
    cases.push_back(case_json(result, i));
  const std::array<const Model*, 1> models = {&result.model};
  Json json = {{"title", result.design.title},
               {"mass_g", rounded(result.mass * grams)},
               {"rim", result.design.supports.empty() ? std::string(rim_word(result.setup.rim)) : "as in the file"},
               {"strings", strings_json(result)},
               {"cases", cases},
               {"buckling_factors", numbers(result.study.buckling.factors)},
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

std::string load_json(const LoadOutcome& outcome, bool timing)
{
  Json json = design_json(outcome.design, timing);
  if (outcome.reference)
  {
    json["reference"] = design_json(*outcome.reference, timing);
    json["beside_reference"] = comparison_json(shared_cases(outcome.design, *outcome.reference));
  }
  json["cautions"] = load_cautions();
  return json_text(json);
}

} // namespace plate
