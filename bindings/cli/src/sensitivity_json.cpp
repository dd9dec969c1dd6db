// SPDX-License-Identifier: MPL-2.0
#include "sensitivity_report.h"

#include "json_text.h"
#include "modes_report.h"
#include "text_table.h"

#include <plate/core/units.h>

#include <nlohmann/json.hpp>

namespace plate
{
namespace
{

using Json = nlohmann::ordered_json;

Json mode_entry(const SensitivityOutcome& outcome, Eigen::Index mode)
{
  Json derivatives = Json::object();
  for (const KeyEffect& effect : outcome.effects)
    derivatives[effect.key.key] = {{"hz_per_unit", steady_slope(effect, mode)}, {"unit", effect.key.unit}};
  return {{"number", mode + 1},
          {"frequency_hz", rounded(outcome.frequencies_hz(mode))},
          {"name", outcome.names[static_cast<std::size_t>(mode)]},
          {"derivatives", derivatives}};
}

Json key_entry(const KeyEffect& effect)
{
  return {{"key", effect.key.key},
          {"value", rounded(effect.key.value)},
          {"unit", effect.key.unit},
          {"change", rounded(effect.key.change)},
          {"greatest_cents_per_change", std::stod(compact(effect.cents, 6))},
          {"mass_g_per_unit", std::stod(compact(effect.slopes.mass_slope * grams, 7))},
          {"acts", effect.slopes.acts}};
}

Json close_entry(const CloseModes& close)
{
  Json modes = Json::array();
  for (int k = 0; k < close.count; ++k)
    modes.push_back(close.first + k + 1);
  return {{"modes", modes}, {"repeated", close.repeated}};
}

} // namespace

std::string sensitivity_json(const SensitivityOutcome& outcome, bool timing)
{
  Json modes = Json::array();
  for (Eigen::Index mode = 0; mode < outcome.frequencies_hz.size(); ++mode)
    modes.push_back(mode_entry(outcome, mode));
  Json keys = Json::array();
  for (const KeyEffect& effect : outcome.effects)
    keys.push_back(key_entry(effect));
  Json close = Json::array();
  for (const CloseModes& run : outcome.close)
    close.push_back(close_entry(run));
  Json json = {{"title", outcome.title},
               {"mass_g", rounded(outcome.mass * grams)},
               {"unknowns", outcome.unknowns},
               {"in_air", outcome.in_air},
               {"modes", modes},
               {"keys", keys},
               {"close_modes", close},
               {"left_out", outcome.left_out},
               {"complete", outcome.complete},
               {"caution", caution}};
  if (timing)
    json["seconds"] = {{"total", outcome.seconds}};
  return json_text(json);
}

} // namespace plate
