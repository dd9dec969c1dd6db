// SPDX-License-Identifier: MPL-2.0
#include "match_report.h"

#include "json_text.h"
#include "match_words.h"
#include "modes_report.h"
#include "text_table.h"

#include <plate/core/units.h>

#include <nlohmann/json.hpp>

#include <numbers>

namespace plate
{
namespace
{

using Json = nlohmann::ordered_json;

Json plies_json(const Laminate& laminate)
{
  Json plies = Json::array();
  for (const Ply& ply : laminate.plies)
    plies.push_back({{"material", ply.material.name},
                     {"thickness_mm", rounded(ply.thickness * millimetres)},
                     {"angle_deg", rounded(ply.angle.in_radians() * 180.0 / std::numbers::pi)}});
  return plies;
}

Json mode_json(const MatchOutcome& outcome, const MatchedMode& mode)
{
  const ComparedMode& target = outcome.targets[mode.target];
  return {{"reference_mode", target.number},
          {"reference_name", target.name},
          {"reference_hz", rounded(target.frequency_hz)},
          {"mode", mode.mode + 1},
          {"frequency_hz", rounded(mode.frequency_hz)},
          {"reduced_hz", rounded(mode.reduced_hz)},
          {"cents", rounded(mode.cents)},
          {"mac", rounded(mode.assurance)},
          {"loss_percent", rounded(mode.loss * percent)}};
}

Json candidate_json(const MatchOutcome& outcome, std::size_t number)
{
  const MatchCandidate& candidate = outcome.result.candidates[number];
  Json modes = Json::array();
  for (const MatchedMode& mode : candidate.modes)
    modes.push_back(mode_json(outcome, mode));
  Json lost = Json::array();
  for (const std::size_t target : candidate.lost)
    lost.push_back(outcome.targets[target].number);
  Json out = {{"layup", layup_code(candidate.laminate)},
              {"plies", plies_json(candidate.laminate)},
              {"mass_g", rounded(candidate.mass * grams)},
              {"score", rounded(candidate.score)},
              {"mismatch_cents", rounded(candidate.mismatch)},
              {"modes", modes},
              {"reference_modes_without_partner", lost},
              {"sensitivity",
               {{"ply_turned_2_deg_cents", rounded(candidate.sensitivity.turned_cents)},
                {"ply", candidate.sensitivity.turned_ply + 1},
                {"plies_3_percent_thicker_cents", rounded(candidate.sensitivity.thicker_cents)}}}};
  for (const Laminate& patch : candidate.patches)
    out["patches"].push_back(plies_json(patch));
  for (std::size_t k = 0; k < candidate.shape.size(); ++k)
    out["free"][outcome.problem.free[k].key] = rounded(candidate.shape[k]);
  if (!outcome.margins.empty())
    out["margin"] = {{"least", rounded(outcome.margins[number].margin)},
                     {"case", outcome.margins[number].load_case},
                     {"wanted", rounded(*outcome.problem.wanted.least_margin)}};
  return out;
}

Json refused_json(const MatchOutcome& outcome)
{
  Json out = Json::array();
  for (std::size_t i = 0; i < outcome.refused.size(); ++i)
  {
    const MatchCandidate& candidate = outcome.result.refused[i];
    out.push_back({{"layup", layup_code(candidate.laminate)},
                   {"mass_g", rounded(candidate.mass * grams)},
                   {"mismatch_cents", rounded(candidate.mismatch)},
                   {"margin", rounded(outcome.refused[i].margin)},
                   {"case", outcome.refused[i].load_case}});
  }
  return out;
}

Json range_json(const Reach& reach, double scale = 1.0)
{
  return {rounded(reach.least * scale), rounded(reach.greatest * scale)};
}

} // namespace

std::string match_json(const MatchOutcome& outcome, bool timing)
{
  const MatchResult& result = outcome.result;
  Json candidates = Json::array();
  for (std::size_t i = 0; i < result.candidates.size(); ++i)
    candidates.push_back(candidate_json(outcome, i));
  Json targets = Json::array();
  for (const ComparedMode& target : outcome.targets)
    targets.push_back({{"number", target.number},
                       {"name", target.name},
                       {"frequency_hz", rounded(target.frequency_hz)},
                       {"loss_percent", target.loss ? Json(rounded(*target.loss * percent)) : Json()}});
  Json out = {
      {"title", outcome.problem.title},
      {"reference", outcome.reference},
      {"reference_mass_g", outcome.reference_mass > 0.0 ? Json(rounded(outcome.reference_mass * grams)) : Json()},
      {"targets", targets},
      {"evaluations", result.num_considered},
      {"reduced_solves", result.num_reduced},
      {"full_solves", result.num_full},
      {"complete", result.complete},
      {"stopped_at", result.complete ? Json() : Json(result.stopped_at)},
      {"fits", result.fits},
      {"reach", {{"mass_g", range_json(result.reach.mass, grams)}}},
      {"out_of_reach", out_of_reach(outcome)},
      {"candidates", candidates},
      {"refused", refused_json(outcome)}};
  if (!result.candidates.empty())
  {
    out["reach"]["D11_over_D22"] = range_json(result.reach.cross_ratio);
    out["reach"]["twist_ratio"] = range_json(result.reach.twist_ratio);
  }
  if (timing)
    out["seconds"] = {{"total", rounded(outcome.seconds)}};
  return json_text(out);
}

} // namespace plate
