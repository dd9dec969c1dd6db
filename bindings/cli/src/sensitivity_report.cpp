// SPDX-License-Identifier: MPL-2.0
#include "sensitivity_report.h"

#include "modes_report.h"
#include "text_table.h"

#include <plate/core/error.h>
#include <plate/core/units.h>
#include <plate/meshes/picture.h>

#include <cmath>

namespace plate
{
namespace
{

Eigen::Index num_modes(const SensitivityOutcome& outcome)
{
  return outcome.frequencies_hz.size();
}

/// The numbers of some modes that follow one another: "9 and 10", "3 to 5".
std::string numbers_of(const CloseModes& close)
{
  return message(close.first + 1, close.count == 2 ? " and " : " to ", close.first + close.count);
}

std::string close_text(const SensitivityOutcome& outcome)
{
  const Eigen::VectorXd& hz = outcome.frequencies_hz;
  std::string out;
  for (const CloseModes& close : outcome.close)
  {
    const double apart = hz(close.first + close.count - 1) / hz(close.first) - 1.0;
    out += close.repeated
               ? message("  modes ", numbers_of(close),
                         " coincide: they part with these slopes as the key grows, whichever is which\n")
               : message("  modes ", numbers_of(close), " are ", fixed(apart * percent, 2),
                         " % apart: a change that moves them against each other by about that much mixes them\n");
  }
  return out;
}

std::string list_of(const std::vector<std::string>& words)
{
  std::string out;
  for (const std::string& word : words)
    out += (out.empty() ? "" : ", ") + word;
  return out;
}

std::string notes(const SensitivityOutcome& outcome)
{
  std::string out = close_text(outcome);
  for (const KeyEffect& effect : outcome.effects)
    if (!effect.slopes.acts)
      out +=
          message("  ", effect.key.key, " does nothing to the modes of this ", outcome.of_body ? "body\n" : "plate\n");
  if (!outcome.left_out.empty())
    out += message("  left out, since edges of patches move through the mesh in jumps (see plate sweep): ",
                   list_of(outcome.left_out), "\n");
  if (!outcome.complete)
    out += message("  interrupted after ", outcome.num_keys_done, " keys\n");
  return out;
}

TextTable effect_table(const SensitivityOutcome& outcome)
{
  std::vector<std::string> heads = {"<key", "value", "<unit", "change", "mass g"};
  std::vector<std::string> frequencies = {"(frequency, Hz)", "", "", "", fixed(outcome.mass * grams, 2)};
  for (Eigen::Index mode = 0; mode < num_modes(outcome); ++mode)
  {
    heads.push_back(mode_head(outcome, mode));
    frequencies.push_back(fixed(outcome.frequencies_hz(mode), 2));
  }
  TextTable table(heads);
  table.add(frequencies);
  for (const KeyEffect& effect : outcome.effects)
  {
    const DerivedKey& key = effect.key;
    std::vector<std::string> row = {key.key, compact(key.value, 6), key.unit, compact(key.change, 3),
                                    fixed(effect.slopes.mass_slope * key.change * grams, 2)};
    for (Eigen::Index mode = 0; mode < num_modes(outcome); ++mode)
      row.push_back(fixed(steady_slope(effect, mode) * key.change, 2));
    table.add(row);
  }
  return table;
}

} // namespace

std::string sensitivity_text(const SensitivityOutcome& outcome, bool timing)
{
  std::string out = message(outcome.title, "\n  what a workshop change of each key adds to mass and frequencies in Hz",
                            outcome.in_air ? ", in air" : "", ";\n  changes: ", workshop_changes,
                            "; those that move a mode most in cents come first\n\n");
  out += message(effect_table(outcome).text(), '\n', notes(outcome));
  if (timing)
    out += message("seconds: total ", fixed(outcome.seconds, 2), "\n");
  return message(out, caution, '\n');
}

std::string sensitivity_csv(const SensitivityOutcome& outcome)
{
  std::vector<std::string> heads = {"key", "value", "unit", "change", "mass_g_per_unit"};
  for (Eigen::Index mode = 0; mode < num_modes(outcome); ++mode)
    heads.push_back(mode_head(outcome, mode) + " hz_per_unit");
  std::string out = csv_line(heads);
  for (const KeyEffect& effect : outcome.effects)
  {
    const DerivedKey& key = effect.key;
    std::vector<std::string> row = {key.key, compact(key.value), key.unit, compact(key.change),
                                    compact(effect.slopes.mass_slope * grams, 7)};
    for (Eigen::Index mode = 0; mode < num_modes(outcome); ++mode)
      row.push_back(compact(steady_slope(effect, mode)));
    out += csv_line(row);
  }
  return out;
}

} // namespace plate
