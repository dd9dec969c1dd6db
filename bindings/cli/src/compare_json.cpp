// SPDX-License-Identifier: MPL-2.0
#include "body_report.h"
#include "compare_report.h"
#include "json_text.h"
#include "modes_report.h"
#include "text_table.h"

#include <plate/core/units.h>
#include <plate/meshes/side_by_side_picture.h>

#include <nlohmann/json.hpp>

#include <numbers>

namespace plate
{
namespace
{

using Json = nlohmann::ordered_json;


/// Nothing turns into null.
Json number_or_null(const std::optional<double>& value, double scale = 1.0)
{
  return value ? Json(rounded(*value * scale)) : Json();
}

Json ratios_json(const LaminateResult& layup)
{
  const RadiationRatios ratios = radiation_ratios(layup);
  return {rounded(ratios.x), rounded(ratios.y)};
}

Json compared_plate_json(const ComparedPlate& plate)
{
  Json modes = Json::array();
  for (Eigen::Index mode = 0; mode < plate.result.modal.frequencies_hz.size(); ++mode)
    modes.push_back(mode_json(plate.result, mode));
  return {{"radiation_ratio_m4_kg_s", ratios_json(plate.layup)},
          {"unknowns", plate.result.system.dofs.num_equations},
          {"in_air", plate.result.model.air_density > 0.0},
          {"modes", modes}};
}

Json compared_body_json(const ComparedBody& body)
{
  Json modes = Json::array();
  for (std::size_t mode = 0; mode < body.result.traits.size(); ++mode)
    modes.push_back(mode_json(body.result, mode));
  return {{"air_volume_l", rounded(body.result.modes.volume * litres)},
          {"radiation_ratio_m4_kg_s", {{"top", ratios_json(body.top)}, {"back", ratios_json(body.back)}}},
          {"unknowns", body.result.system.system.dofs.num_equations},
          {"in_air", true},
          {"modes", modes}};
}

/// What is said of every design, under its title.
Json compared_json(const Compared& design)
{
  Json json = {{"title", design.title}, {"mass_g", rounded(design.mass * grams)}};
  json.update(design.body() ? compared_body_json(*design.body()) : compared_plate_json(*design.plate()));
  return json;
}

Json measured_json(const CompareOutcome& outcome)
{
  Json modes = Json::array();
  for (const ComparedMode& mode : outcome.reference)
    modes.push_back({{"number", mode.number},
                     {"frequency_hz", rounded(mode.frequency_hz)},
                     {"name", mode.name},
                     {"loss_percent", number_or_null(mode.loss, percent)}});
  return {{"title", outcome.title}, {"measured", true}, {"modes", modes}};
}

Json pair_json(const CompareOutcome& outcome, const ComparedDesign& design, const ComparedPair& pair)
{
  const ComparedMode& reference = outcome.reference[pair.reference];
  const ComparedMode& mode = design.design.modes[pair.mode];
  const FrequencyDifference difference = frequency_difference(reference.frequency_hz, mode.frequency_hz);
  return {{"reference_mode", reference.number},
          {"mode", mode.number},
          {"mac", number_or_null(pair.assurance)},
          {"group_mac", number_or_null(pair.group_assurance)},
          {"reference_hz", rounded(reference.frequency_hz)},
          {"frequency_hz", rounded(mode.frequency_hz)},
          {"cents", rounded(difference.cents)},
          {"difference_percent", rounded(difference.percent)},
          {"reference_loss_percent", number_or_null(reference.loss, percent)},
          {"loss_percent", number_or_null(mode.loss, percent)},
          {"reference_name", reference.name},
          {"name", mode.name}};
}

Json numbers_from_one(const std::vector<int>& indices)
{
  Json out = Json::array();
  for (const int index : indices)
    out.push_back(index + 1);
  return out;
}

Json group_json(const ModeGroup& group)
{
  Json angles = Json::array();
  for (const double angle : group.angles)
    angles.push_back(rounded(angle * 180.0 / std::numbers::pi));
  return {{"reference_modes", numbers_from_one(group.reference)},
          {"modes", numbers_from_one(group.other)},
          {"angles_degrees", angles}};
}

Json design_json(const CompareOutcome& outcome, const ComparedDesign& compared)
{
  const PairedModes& paired = compared.paired;
  Json json = compared_json(compared.design);
  if (outcome.reference_design)
    json["mass_difference_percent"] = rounded(percent * (compared.design.mass / outcome.reference_design->mass - 1.0));
  json["left_out_percent"] = rounded(percent * paired.share_left_out);
  json["pairs"] = Json::array();
  for (const ComparedPair& pair : paired.pairs)
    json["pairs"].push_back(pair_json(outcome, compared, pair));
  json["unpaired_reference_modes"] = Json::array();
  for (const std::size_t mode : paired.unpaired)
    json["unpaired_reference_modes"].push_back(outcome.reference[mode].number);
  json["groups"] = Json::array();
  for (const ModeGroup& group : paired.groups)
    json["groups"].push_back(group_json(group));
  json["mac"] = Json::array();
  for (Eigen::Index row = 0; row < paired.assurance.rows(); ++row)
  {
    Json values = Json::array();
    for (const double value : paired.assurance.row(row))
      values.push_back(rounded(value));
    json["mac"].push_back(std::move(values));
  }
  return json;
}

const char* pairing_word(PairedBy paired_by)
{
  switch (paired_by)
  {
  case PairedBy::shape:
    return "shape";
  case PairedBy::name_and_order:
    return "name and order";
  case PairedBy::name_and_frequency:
    return "name and frequency";
  }
  return "";
}

} // namespace

std::string compare_json(const CompareOutcome& outcome, bool timing)
{
  Json json = {{"reference", outcome.title},
               {"paired_by", pairing_word(outcome.paired_by)},
               {outcome.of_bodies() ? "reference_body" : "reference_plate",
                outcome.reference_design ? compared_json(*outcome.reference_design) : measured_json(outcome)},
               {"designs", Json::array()},
               {"caution", caution}};
  for (const ComparedDesign& design : outcome.designs)
    json["designs"].push_back(design_json(outcome, design));
  if (timing)
    json["seconds"] = {{"total", outcome.seconds}};
  return json_text(json);
}

} // namespace plate
