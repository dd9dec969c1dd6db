// SPDX-License-Identifier: MPL-2.0
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

/// What is said of every plate, under its title.
Json plate_json(const ComparedPlate& plate)
{
  const RadiationRatios ratios = radiation_ratios(plate.layup);
  Json modes = Json::array();
  for (Eigen::Index mode = 0; mode < plate.modes.modal.frequencies_hz.size(); ++mode)
    modes.push_back(mode_json(plate.modes, mode));
  return {{"title", plate.modes.design.title},
          {"mass_g", rounded(plate.modes.system.mass * grams)},
          {"radiation_ratio_m4_kg_s", {rounded(ratios.x), rounded(ratios.y)}},
          {"unknowns", plate.modes.system.dofs.num_equations},
          {"in_air", plate.modes.model.air_density > 0.0},
          {"modes", modes}};
}

Json measured_json(const CompareOutcome& outcome)
{
  Json modes = Json::array();
  for (const ReferenceMode& mode : outcome.reference)
    modes.push_back({{"number", mode.number},
                     {"frequency_hz", rounded(mode.frequency_hz)},
                     {"name", mode.name},
                     {"loss_percent", number_or_null(mode.loss, percent)}});
  return {{"title", outcome.title}, {"measured", true}, {"modes", modes}};
}

Json pair_json(const CompareOutcome& outcome, const ComparedDesign& design, const ComparedPair& pair)
{
  const ReferenceMode& reference = outcome.reference[pair.reference];
  const auto mode = static_cast<Eigen::Index>(pair.mode);
  const double hz = design.plate.modes.modal.frequencies_hz[mode];
  const FrequencyDifference difference = frequency_difference(reference.frequency_hz, hz);
  return {{"reference_mode", reference.number},
          {"mode", pair.mode + 1},
          {"mac", number_or_null(pair.assurance)},
          {"group_mac", number_or_null(pair.group_assurance)},
          {"reference_hz", rounded(reference.frequency_hz)},
          {"frequency_hz", rounded(hz)},
          {"cents", rounded(difference.cents)},
          {"difference_percent", rounded(difference.percent)},
          {"reference_loss_percent", number_or_null(reference.loss, percent)},
          {"loss_percent", rounded(design.plate.modes.losses[mode] * percent)},
          {"reference_name", reference.name},
          {"name", design.plate.modes.names[pair.mode]}};
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

Json design_json(const CompareOutcome& outcome, const ComparedDesign& design)
{
  Json json = plate_json(design.plate);
  if (outcome.reference_plate)
    json["mass_difference_percent"] =
        rounded(percent * (design.plate.modes.system.mass / outcome.reference_plate->modes.system.mass - 1.0));
  json["left_out_percent"] = rounded(percent * design.share_left_out);
  json["pairs"] = Json::array();
  for (const ComparedPair& pair : design.pairs)
    json["pairs"].push_back(pair_json(outcome, design, pair));
  json["unpaired_reference_modes"] = Json::array();
  for (const std::size_t mode : design.unpaired)
    json["unpaired_reference_modes"].push_back(outcome.reference[mode].number);
  json["groups"] = Json::array();
  for (const ModeGroup& group : design.groups)
    json["groups"].push_back(group_json(group));
  json["mac"] = Json::array();
  for (Eigen::Index row = 0; row < design.assurance.rows(); ++row)
  {
    Json values = Json::array();
    for (const double value : design.assurance.row(row))
      values.push_back(rounded(value));
    json["mac"].push_back(std::move(values));
  }
  return json;
}

} // namespace

std::string compare_json(const CompareOutcome& outcome, bool timing)
{
  Json json = {
      {"reference", outcome.title},
      {"paired_by", outcome.paired_by == PairedBy::shape ? "shape" : "name and order"},
      {"reference_plate", outcome.reference_plate ? plate_json(*outcome.reference_plate) : measured_json(outcome)},
      {"designs", Json::array()},
      {"caution", caution}};
  for (const ComparedDesign& design : outcome.designs)
    json["designs"].push_back(design_json(outcome, design));
  if (timing)
    json["seconds"] = {{"total", outcome.seconds}};
  return json_text(json);
}

} // namespace plate
