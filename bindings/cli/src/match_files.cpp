// SPDX-License-Identifier: MPL-2.0
#include "match_files.h"

#include "design_pictures.h"
#include "match_report.h"
#include "match_words.h"

#include <plate/core/error.h>
#include <plate/meshes/front_picture.h>
#include <plate/meshes/side_by_side_picture.h>

#include <algorithm>

namespace plate
{
namespace
{

std::string design_text(const MatchOutcome& outcome, std::size_t number)
{
  return message("# ", layup_code(outcome.result.candidates[number].laminate),
                 "\n# Found by plate match; a prediction does not replace a test piece.\n",
                 outcome.designs[number].text());
}

FrontPicture front_picture(const MatchOutcome& outcome)
{
  FrontPicture picture{.title = outcome.problem.title,
                       .lines = {"Laminates beside " + outcome.reference},
                       .points = {},
                       .reference_mass = outcome.reference_mass};
  for (std::size_t i = 0; i < outcome.result.candidates.size(); ++i)
  {
    const MatchCandidate& candidate = outcome.result.candidates[i];
    picture.points.push_back({.mass = candidate.mass, .mismatch = candidate.mismatch, .label = std::to_string(i + 1)});
    picture.lines.push_back(message(i + 1, ":  ", layup_code(candidate.laminate)));
  }
  return picture;
}

/// The best laminate beside the reference, the wanted modes only.
void write_side_by_side_pictures(const OutputFolder& folder, const MatchOutcome& outcome)
{
  const MatchCandidate& best = outcome.result.candidates.front();
  int count = 0;
  std::vector<ModePair> pairs;
  for (const MatchedMode& mode : best.modes)
  {
    pairs.push_back({.first = static_cast<std::size_t>(outcome.targets[mode.target].number - 1),
                     .second = static_cast<std::size_t>(mode.mode)});
    count = std::max({count, outcome.targets[mode.target].number, mode.mode + 1});
  }
  if (pairs.empty())
    return;
  const DesignDocument reference = DesignDocument::from_file(
      outcome.problem.reference, {.folder = {}, .allow_outside = outcome.problem.allow_outside});
  const ModesResult first_modes = compute_modes(reference.design(), count);
  const ModesResult second_modes = compute_modes(outcome.designs.front().design(), count);
  const DesignModes first = design_modes(first_modes);
  const DesignModes second = design_modes(second_modes);
  for (const char* ending : {".svg", ".png"})
    write_side_by_side(folder.file(message("side_by_side", ending)), first, second, pairs);
}

} // namespace

void write_match_files(const OutputFolder& folder, const MatchOutcome& outcome, bool timing)
{
  folder.write("match.json", match_json(outcome, timing));
  folder.write("match.csv", match_csv(outcome));
  for (std::size_t i = 0; i < outcome.designs.size(); ++i)
    folder.write(message("laminate_", i + 1, ".toml"), design_text(outcome, i));
  if (outcome.designs.empty())
    return;
  for (const char* ending : {".svg", ".png"})
    write_front_picture(folder.file(message("mismatch_over_mass", ending)), front_picture(outcome));
  if (!outcome.problem.reference.empty())
    write_side_by_side_pictures(folder, outcome);
}

} // namespace plate
