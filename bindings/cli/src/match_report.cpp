// SPDX-License-Identifier: MPL-2.0
#include "match_report.h"

#include "match_words.h"
#include "modes_report.h"
#include "text_table.h"

#include <plate/core/error.h>
#include <plate/core/units.h>

#include <algorithm>
#include <cmath>

namespace plate
{
namespace
{

std::string target_name(const ComparedMode& mode)
{
  return mode.name.empty() ? message("mode ", mode.number) : mode.name;
}

/// The mode least like its target; 1 if there is none.
double least_likeness(const MatchCandidate& candidate)
{
  double least = 1.0;
  for (const MatchedMode& mode : candidate.modes)
    least = std::min(least, mode.assurance);
  return least;
}

std::string margin_cell(const MatchOutcome& outcome, std::size_t candidate)
{
  const double margin = outcome.margins[candidate].margin;
  if (std::isnan(margin))
    return "-";
  return fixed(margin, 2) + (margin < *outcome.problem.wanted.least_margin ? " !" : "");
}

std::string summary_text(const MatchOutcome& outcome)
{
  std::vector<std::string> heads = {"laminate", "mass g", "mismatch cents"};
  for (const ComparedMode& target : outcome.targets)
    heads.push_back(target_name(target) + " cents");
  heads.insert(heads.end(), {"MAC", "2 deg", "3 %"});
  const bool scored = outcome.problem.wanted.likeness > 0.0 || outcome.problem.wanted.loss;
  if (scored)
    heads.emplace_back("score");
  if (!outcome.margins.empty())
    heads.emplace_back("margin");
  TextTable table(heads);
  for (std::size_t i = 0; i < outcome.result.candidates.size(); ++i)
  {
    const MatchCandidate& candidate = outcome.result.candidates[i];
    std::vector<std::string> row = {std::to_string(i + 1), fixed(candidate.mass * grams, 1),
                                    fixed(candidate.mismatch, 1)};
    for (std::size_t t = 0; t < outcome.targets.size(); ++t)
    {
      const auto mode = std::find_if(candidate.modes.begin(), candidate.modes.end(),
                                     [t](const MatchedMode& m) { return m.target == t; });
      row.push_back(mode == candidate.modes.end() ? "-" : with_sign(mode->cents, 1));
    }
    row.push_back(fixed(least_likeness(candidate), 2));
    row.push_back(fixed(candidate.sensitivity.turned_cents, 1));
    row.push_back(fixed(candidate.sensitivity.thicker_cents, 1));
    if (scored)
      row.push_back(fixed(candidate.score, 1));
    if (!outcome.margins.empty())
      row.push_back(margin_cell(outcome, i));
    table.add(row);
  }
  return table.text();
}

std::string codes_text(const MatchOutcome& outcome)
{
  std::string out;
  for (std::size_t i = 0; i < outcome.result.candidates.size(); ++i)
    out += message("  ", i + 1, "  ", layup_code(outcome.result.candidates[i].laminate),
                   patch_words(outcome.result.candidates[i]), shape_words(outcome, i), '\n');
  return out;
}

/// Losses of all laminates below those of the reference.
std::string losses_text(const MatchOutcome& outcome)
{
  std::vector<std::string> heads = {"<loss in %"};
  std::vector<std::string> reference = {"reference"};
  for (const ComparedMode& target : outcome.targets)
  {
    heads.push_back(target_name(target));
    reference.push_back(target.loss ? fixed(*target.loss * percent, 2) : "-");
  }
  TextTable table(heads);
  table.add(reference);
  for (std::size_t i = 0; i < outcome.result.candidates.size(); ++i)
  {
    std::vector<std::string> row(outcome.targets.size() + 1, "-");
    row.front() = message("laminate ", i + 1);
    for (const MatchedMode& mode : outcome.result.candidates[i].modes)
      row[mode.target + 1] = fixed(mode.loss * percent, 2);
    table.add(row);
  }
  return table.text();
}

/// Modes of the best beside the targets.
std::string best_text(const MatchOutcome& outcome)
{
  const MatchCandidate& best = outcome.result.candidates.front();
  TextTable table({"<target", "Hz", "mode here", "Hz here", "cents", "reduced Hz", "MAC"});
  for (const MatchedMode& mode : best.modes)
  {
    const ComparedMode& target = outcome.targets[mode.target];
    table.add({target_name(target), fixed(target.frequency_hz, 2), std::to_string(mode.mode + 1),
               fixed(mode.frequency_hz, 2), with_sign(mode.cents, 1), fixed(mode.reduced_hz, 2),
               fixed(mode.assurance, 3)});
  }
  std::string out = "Laminate 1 beside the reference, solved in full:\n\n" + table.text();
  for (const MatchedMode& mode : best.modes)
    if (mode.assurance < much_alike)
      out += message("  ", target_name(outcome.targets[mode.target]), " has another shape than the reference's: MAC ",
                     fixed(mode.assurance, 2), " is below ", compact(much_alike),
                     "; equal frequencies are not equal shapes; see wanted.likeness\n");
  for (const std::size_t target : best.lost)
    out += message("  ", target_name(outcome.targets[target]), " has no mode of like shape here\n");
  return out;
}

std::string reach_text(const MatchOutcome& outcome)
{
  std::string out;
  for (const std::string& sentence : out_of_reach(outcome))
    out += message("  ", sentence, '\n');
  return out.empty() ? out : "\nOut of reach of what is available:\n" + out;
}

std::string refused_text(const MatchOutcome& outcome, std::size_t number)
{
  const MatchCandidate& candidate = outcome.result.refused[number];
  const MatchMargin& margin = outcome.refused[number];
  return message("  refused: ", layup_code(candidate.laminate), ", ", fixed(candidate.mass * grams, 1), " g, ",
                 fixed(candidate.mismatch, 1), " cents, ",
                 std::isnan(margin.margin) ? "no margin" : "margin " + fixed(margin.margin, 2), ": ", margin.load_case,
                 '\n');
}

std::string margin_text(const MatchOutcome& outcome)
{
  if (outcome.margins.empty())
    return {};
  std::string out =
      message("  margin: least of all cases of plate load, before knock-downs; ! below wanted.margin.min = ",
              compact(*outcome.problem.wanted.least_margin), '\n');
  for (std::size_t i = 0; i < outcome.refused.size(); ++i)
    out += refused_text(outcome, i);
  for (std::size_t i = 0; i < outcome.margins.size(); ++i)
    if (std::isnan(outcome.margins[i].margin))
      out += message("  no margin of laminate ", i + 1, ": ", outcome.margins[i].load_case, '\n');
  return out;
}

} // namespace

std::string match_text(const MatchOutcome& outcome, bool timing)
{
  const MatchResult& result = outcome.result;
  std::string out = message(outcome.problem.title, "\n  reference: ", outcome.reference);
  if (outcome.reference_mass > 0.0)
    out += message(", ", fixed(outcome.reference_mass * grams, 1), " g");
  out += message("\n  ", result.num_considered, " stacks considered, ", result.num_reduced,
                 " solved on the reduced model, ", result.num_full, " in full",
                 result.complete ? "" : "; stopped early", "\n\n");
  if (!result.fits)
    out += no_fit_words(outcome) + "\n\n";
  if (result.candidates.empty())
    return out + nothing_found_words(outcome) + '\n';
  out += summary_text(outcome);
  out +=
      "  cents: above the reference; MAC: likeness of the least alike; 2 deg, 3 %: greatest change of a mode by one "
      "ply\n"
      "  (and its mirror image) off its angle, by all plies thicker; none of the laminates is beaten in both mass and "
      "score\n";
  out += margin_text(outcome) + '\n' + codes_text(outcome) +
         "  from inside to outside: angle, material, thickness in mm\n\n";
  out += best_text(outcome) + '\n' + losses_text(outcome) + reach_text(outcome);
  if (timing)
    out += message("seconds: total ", fixed(outcome.seconds, 2), "\n");
  return message(out, caution, '\n');
}

std::string match_csv(const MatchOutcome& outcome)
{
  std::string out = csv_line({"laminate", "layup", "mass_g", "mismatch_cents", "target", "target_hz", "mode",
                              "frequency_hz", "cents", "mac", "reduced_hz", "loss_percent"});
  for (std::size_t i = 0; i < outcome.result.candidates.size(); ++i)
  {
    const MatchCandidate& candidate = outcome.result.candidates[i];
    for (const MatchedMode& mode : candidate.modes)
      out += csv_line({std::to_string(i + 1), layup_code(candidate.laminate), compact(candidate.mass * grams),
                       compact(candidate.mismatch), target_name(outcome.targets[mode.target]),
                       compact(outcome.targets[mode.target].frequency_hz), std::to_string(mode.mode + 1),
                       compact(mode.frequency_hz), compact(mode.cents), compact(mode.assurance),
                       compact(mode.reduced_hz), compact(mode.loss * percent)});
  }
  return out;
}

} // namespace plate
