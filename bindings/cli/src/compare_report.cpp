// SPDX-License-Identifier: MPL-2.0
#include "compare_report.h"

#include "modes_report.h"
#include "text_table.h"

#include <plate/core/error.h>
#include <plate/core/units.h>
#include <plate/meshes/picture.h>
#include <plate/meshes/side_by_side_picture.h>

#include <algorithm>
#include <numbers>

namespace plate
{
namespace
{

constexpr double least_told = 5e-4; // share of the reference left out [-]

double frequency_hz(const ComparedDesign& design, const ComparedPair& pair)
{
  return design.plate.modes.modal.frequencies_hz[static_cast<Eigen::Index>(pair.mode)];
}

double loss(const ComparedDesign& design, const ComparedPair& pair)
{
  return design.plate.modes.losses[static_cast<Eigen::Index>(pair.mode)];
}

std::string plate_text(const ComparedPlate& plate)
{
  const RadiationRatios ratios = radiation_ratios(plate.layup);
  return message("mass ", fixed(plate.modes.system.mass * grams, 1), " g, radiation ratio along x ", fixed(ratios.x, 2),
                 ", along y ", fixed(ratios.y, 2), " m4/(kg s)");
}

/// Whether the modal assurance criterion of a pair was taken together with neighbours.
bool in_group(const ComparedDesign& design, const ComparedPair& pair)
{
  return std::any_of(design.groups.begin(), design.groups.end(),
                     [&](const ModeGroup& group)
                     {
                       return std::find(group.reference.begin(), group.reference.end(),
                                        static_cast<int>(pair.reference)) != group.reference.end();
                     });
}

std::string assurance_text(const ComparedDesign& design, const ComparedPair& pair)
{
  if (!pair.assurance)
    return "-";
  return in_group(design, pair) ? fixed(*pair.group_assurance, 3) + "*" : fixed(*pair.assurance, 3);
}

std::string pairs_text(const CompareOutcome& outcome, const ComparedDesign& design)
{
  TextTable table({"mode", "here", "Hz", "Hz here", "%", "cents", "MAC", "loss %", "loss % here", "<name"});
  for (const ComparedPair& pair : design.pairs)
  {
    const ReferenceMode& reference = outcome.reference[pair.reference];
    const double hz = frequency_hz(design, pair);
    const FrequencyDifference difference = frequency_difference(reference.frequency_hz, hz);
    table.add({std::to_string(reference.number), std::to_string(pair.mode + 1), fixed(reference.frequency_hz, 2),
               fixed(hz, 2), with_sign(difference.percent, 1), with_sign(difference.cents, 0),
               assurance_text(design, pair), reference.loss ? fixed(*reference.loss * percent, 2) : "-",
               fixed(loss(design, pair) * percent, 2), pair_name(outcome, design, pair)});
  }
  return table.text();
}

std::string list_text(const std::vector<int>& indices)
{
  std::string out;
  for (const int index : indices)
    out += message(out.empty() ? "" : ", ", index + 1);
  return out;
}

std::string notes_text(const CompareOutcome& outcome, const ComparedDesign& design)
{
  std::string out;
  for (const ModeGroup& group : design.groups)
    out += message("  * modes ", list_text(group.reference), " of the reference or ", list_text(group.other),
                   " here have nearly one frequency and mix: the MAC is that of the spaces they span, which differ by "
                   "up to ",
                   fixed(group.angles.maxCoeff() * 180.0 / std::numbers::pi, 1), " degrees\n");
  for (const std::size_t mode : design.unpaired)
    out += message("  mode ", outcome.reference[mode].number, " (", fixed(outcome.reference[mode].frequency_hz, 1),
                   " Hz) has no mode here of like ", outcome.paired_by == PairedBy::shape ? "shape" : "name or order",
                   " among the lowest ", design.plate.modes.names.size(), "\n");
  if (design.share_left_out > least_told)
    out += message("  ", fixed(design.share_left_out * percent, 1), " % of the ",
                   outcome.reference_plate ? "reference's mass" : "measured points",
                   " has no place on this plate and is left out of the MAC\n");
  return out.empty() ? out : '\n' + out;
}

std::string design_text(const CompareOutcome& outcome, const ComparedDesign& design)
{
  std::string out = message(design.plate.modes.design.title, "\n  ", plate_text(design.plate));
  if (outcome.reference_plate)
    out += message(
        "; mass ",
        with_sign(percent * (design.plate.modes.system.mass / outcome.reference_plate->modes.system.mass - 1.0), 1),
        " %");
  return message(out, "\n\n", pairs_text(outcome, design), notes_text(outcome, design), '\n');
}

} // namespace

RadiationRatios radiation_ratios(const LaminateResult& layup)
{
  constexpr std::size_t quarter_turn = 90 / polar_step;
  return {.x = radiation_ratio(layup.polar.front().bending, layup.areal_mass),
          .y = radiation_ratio(layup.polar[quarter_turn].bending, layup.areal_mass)};
}

std::string pair_name(const CompareOutcome& outcome, const ComparedDesign& design, const ComparedPair& pair)
{
  const std::string& first = outcome.reference[pair.reference].name;
  const std::string& second = design.plate.modes.names[pair.mode];
  if (first == second || (second.empty() && !outcome.reference_plate))
    return trade_name(first);
  const auto shown = [](const std::string& name) { return name.empty() ? "-" : trade_name(name); };
  return shown(first) + " / " + shown(second);
}

std::string compare_text(const CompareOutcome& outcome, bool timing)
{
  std::string out = message("Reference: ", outcome.title, '\n');
  if (outcome.reference_plate)
    out += message("  ", plate_text(*outcome.reference_plate), '\n');
  out += outcome.paired_by == PairedBy::shape
             ? "  modes paired by shape (MAC: modal assurance criterion, 1 for the same shape)\n\n"
             : "  modes paired by name, the others in their order: the list has no shapes\n\n";
  for (const ComparedDesign& design : outcome.designs)
    out += design_text(outcome, design);
  if (timing)
    out += message("seconds: total ", fixed(outcome.seconds, 2), "\n");
  return message(out, caution, '\n');
}

std::string compare_csv(const CompareOutcome& outcome)
{
  const auto cell = [](const std::optional<double>& value, double scale = 1.0)
  { return value ? compact(*value * scale) : std::string(); };
  std::string out =
      csv_line({"design", "title", "reference_mode", "mode", "reference_name", "name", "reference_hz", "frequency_hz",
                "difference_percent", "cents", "mac", "group_mac", "reference_loss_percent", "loss_percent"});
  for (std::size_t i = 0; i < outcome.designs.size(); ++i)
    for (const ComparedPair& pair : outcome.designs[i].pairs)
    {
      const ComparedDesign& design = outcome.designs[i];
      const ReferenceMode& reference = outcome.reference[pair.reference];
      const double hz = frequency_hz(design, pair);
      const FrequencyDifference difference = frequency_difference(reference.frequency_hz, hz);
      out += csv_line({std::to_string(i + 1), design.plate.modes.design.title, std::to_string(reference.number),
                       std::to_string(pair.mode + 1), reference.name, design.plate.modes.names[pair.mode],
                       compact(reference.frequency_hz), compact(hz), compact(difference.percent),
                       compact(difference.cents), cell(pair.assurance), cell(pair.group_assurance),
                       cell(reference.loss, percent), compact(loss(design, pair) * percent)});
    }
  return out;
}

} // namespace plate
