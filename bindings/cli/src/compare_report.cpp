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

std::string ratios_text(const LaminateResult& layup)
{
  const RadiationRatios ratios = radiation_ratios(layup);
  return message("radiation ratio along x ", fixed(ratios.x, 2), ", along y ", fixed(ratios.y, 2), " m4/(kg s)");
}

/// What is said of a design under its title; with a reference the difference of the masses too.
std::string facts_text(const Compared& design, const std::optional<Compared>& reference)
{
  const std::string mass = message("mass ", fixed(design.mass * grams, 1), " g, ");
  const std::string change =
      reference ? message("; mass ", with_sign(percent * (design.mass / reference->mass - 1.0), 1), " %") : "";
  if (const ComparedBody* body = design.body())
    return message(mass, "air ", fixed(body->result.modes.volume * litres, 3), " l", change,
                   "\n  top: ", ratios_text(body->top), "\n  back: ", ratios_text(body->back));
  return message(mass, ratios_text(design.plate()->layup), change);
}

/// Whether the modal assurance criterion of a pair was taken together with neighbours.
bool in_group(const PairedModes& paired, const ComparedPair& pair)
{
  return std::any_of(paired.groups.begin(), paired.groups.end(),
                     [&](const ModeGroup& group)
                     {
                       return std::find(group.reference.begin(), group.reference.end(),
                                        static_cast<int>(pair.reference)) != group.reference.end();
                     });
}

std::string assurance_text(const PairedModes& paired, const ComparedPair& pair)
{
  if (!pair.assurance)
    return "-";
  return in_group(paired, pair) ? fixed(*pair.group_assurance, 3) + "*" : fixed(*pair.assurance, 3);
}

std::string pairs_text(const CompareOutcome& outcome, const ComparedDesign& design)
{
  TextTable table({"mode", "here", "Hz", "Hz here", "%", "cents", "MAC", "loss %", "loss % here", "<name"});
  const auto loss_text = [](const std::optional<double>& loss) { return loss ? fixed(*loss * percent, 2) : "-"; };
  for (const ComparedPair& pair : design.paired.pairs)
  {
    const ComparedMode& reference = outcome.reference[pair.reference];
    const ComparedMode& mode = design.design.modes[pair.mode];
    const FrequencyDifference difference = frequency_difference(reference.frequency_hz, mode.frequency_hz);
    table.add({std::to_string(reference.number), std::to_string(mode.number), fixed(reference.frequency_hz, 2),
               fixed(mode.frequency_hz, 2), with_sign(difference.percent, 1), with_sign(difference.cents, 0),
               assurance_text(design.paired, pair), loss_text(reference.loss), loss_text(mode.loss),
               pair_name(outcome, design, pair)});
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

std::string likeness_words(PairedBy paired_by)
{
  switch (paired_by)
  {
  case PairedBy::shape:
    return "shape";
  case PairedBy::name_and_order:
    return "name or order";
  case PairedBy::name_and_frequency:
    return "name or frequency";
  }
  return {};
}

std::string notes_text(const CompareOutcome& outcome, const ComparedDesign& design)
{
  std::string out;
  for (const ModeGroup& group : design.paired.groups)
    out += message("  * modes ", list_text(group.reference), " of the reference or ", list_text(group.other),
                   " here have nearly one frequency and mix: the MAC is that of the spaces they span, which differ by "
                   "up to ",
                   fixed(group.angles.maxCoeff() * 180.0 / std::numbers::pi, 1), " degrees\n");
  for (const std::size_t mode : design.paired.unpaired)
    out += message("  mode ", outcome.reference[mode].number, " (", fixed(outcome.reference[mode].frequency_hz, 1),
                   " Hz) has no mode here of like ", likeness_words(outcome.paired_by), " among the lowest ",
                   design.design.modes.size(), "\n");
  if (design.paired.share_left_out > least_told)
    out += message("  ", fixed(design.paired.share_left_out * percent, 1), " % of the ",
                   outcome.reference_design ? "reference's mass" : "measured points", " has no place on ",
                   outcome.of_bodies() ? "these plates" : "this plate", " and is left out of the MAC\n");
  return out.empty() ? out : '\n' + out;
}

std::string design_text(const CompareOutcome& outcome, const ComparedDesign& design)
{
  return message(design.design.title, "\n  ", facts_text(design.design, outcome.reference_design), "\n\n",
                 pairs_text(outcome, design), notes_text(outcome, design), '\n');
}

std::string pairing_text(const CompareOutcome& outcome)
{
  switch (outcome.paired_by)
  {
  case PairedBy::shape:
    return message("  modes paired by ",
                   outcome.of_bodies() ? "the shape of top and back and the pressure of the air" : "shape",
                   " (MAC: modal assurance criterion, 1 for the same shape)\n\n");
  case PairedBy::name_and_order:
    return "  modes paired by name, the others in their order: the list has no shapes\n\n";
  case PairedBy::name_and_frequency:
    return "  modes paired by name, the others by frequency: the list has no shapes\n\n";
  }
  return {};
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
  const std::string& second = design.design.modes[pair.mode].name;
  if (first == second || (second.empty() && !outcome.reference_design))
    return trade_name(first);
  const auto shown = [](const std::string& name) { return name.empty() ? "-" : trade_name(name); };
  return shown(first) + " / " + shown(second);
}

std::string compare_text(const CompareOutcome& outcome, bool timing)
{
  std::string out = message("Reference: ", outcome.title, '\n');
  if (outcome.reference_design)
    out += message("  ", facts_text(*outcome.reference_design, {}), '\n');
  out += pairing_text(outcome);
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
    for (const ComparedPair& pair : outcome.designs[i].paired.pairs)
    {
      const Compared& design = outcome.designs[i].design;
      const ComparedMode& reference = outcome.reference[pair.reference];
      const ComparedMode& mode = design.modes[pair.mode];
      const FrequencyDifference difference = frequency_difference(reference.frequency_hz, mode.frequency_hz);
      out +=
          csv_line({std::to_string(i + 1), design.title, std::to_string(reference.number), std::to_string(mode.number),
                    reference.name, mode.name, compact(reference.frequency_hz), compact(mode.frequency_hz),
                    compact(difference.percent), compact(difference.cents), cell(pair.assurance),
                    cell(pair.group_assurance), cell(reference.loss, percent), cell(mode.loss, percent)});
    }
  return out;
}

} // namespace plate
