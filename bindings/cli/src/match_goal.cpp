// SPDX-License-Identifier: MPL-2.0
#include "match_goal.h"

#include "checked_design.h"
#include "modes_result.h"
#include "pair_measured.h"

#include <plate/core/error.h>
#include <plate/design/design_error.h>
#include <plate/design/measured_modes.h>

#include <algorithm>
#include <charconv>
#include <utility>

namespace plate
{
namespace
{

constexpr int least_modes = 12;  // solved of a reference: M5 is among them on the usual plates
constexpr std::size_t spare = 2; // modes of the guide beyond the last target: they keep its neighbours apart

/// A mode of the reference and the one of the guide that has its shape.
struct GuidedMode
{
  ComparedMode mode;
  int guide;
};

std::string listed(const std::vector<GuidedMode>& modes)
{
  std::string out;
  for (const GuidedMode& mode : modes)
    out += message(out.empty() ? "" : ", ", mode.mode.number,
                   mode.mode.name.empty() ? "" : message(" (", mode.mode.name, ")"));
  return out;
}

/// The mode that a word of wanted.modes means: a name or a number.
const GuidedMode& wanted_mode(const std::vector<GuidedMode>& modes, const std::string& word)
{
  int number = 0;
  const auto parsed = std::from_chars(word.data(), word.data() + word.size(), number);
  const bool is_number = parsed.ec == std::errc() && parsed.ptr == word.data() + word.size();
  for (const GuidedMode& mode : modes)
    if (is_number ? mode.mode.number == number : mode.mode.name == word)
      return mode;
  throw DesignError(message("wanted.modes: the reference has no mode ", word, "; it has ", listed(modes),
                            "; name one of these, or set wanted.count"));
}

std::vector<GuidedMode> wanted_modes(const std::vector<GuidedMode>& modes, const MatchWishes& wanted)
{
  std::vector<GuidedMode> out;
  for (const std::string& word : wanted.modes)
    out.push_back(wanted_mode(modes, word));
  if (wanted.count > static_cast<int>(modes.size()))
    throw DesignError(message("wanted.count = ", wanted.count, ": the reference has ", modes.size(),
                              " modes: ", listed(modes), "; ask for no more"));
  out.insert(out.end(), modes.begin(), modes.begin() + wanted.count);
  return out;
}

/// The modes of a design, each guided by itself.
std::vector<GuidedMode> own_modes(const ModesResult& result)
{
  std::vector<GuidedMode> out;
  for (std::size_t i = 0; i < result.names.size(); ++i)
  {
    const auto at = static_cast<Eigen::Index>(i);
    out.push_back({.mode = {.number = static_cast<int>(i + 1),
                            .name = result.names[i],
                            .frequency_hz = result.modal.frequencies_hz(at),
                            .loss = result.losses(at)},
                   .guide = static_cast<int>(i)});
  }
  return out;
}

/// Measured modes, guided by those of a design that plate compare pairs them with.
std::vector<GuidedMode> measured_modes(const MeasuredModes& measured, const PairedModes& paired)
{
  std::vector<GuidedMode> out;
  for (const ComparedPair& pair : paired.pairs)
  {
    const MeasuredMode& mode = measured.modes[pair.reference];
    out.push_back(
        {.mode = {.number = mode.number, .name = mode.name, .frequency_hz = mode.frequency_hz, .loss = mode.loss},
         .guide = static_cast<int>(pair.mode)});
  }
  return out;
}

/// Keeps the modes of the guide up to a little beyond the last that is needed.
void add_guide(const ModesResult& result, const std::vector<GuidedMode>& wanted, NamedGoal& out)
{
  int last = 0;
  for (const GuidedMode& mode : wanted)
  {
    last = std::max(last, mode.guide);
    out.targets.push_back(mode.mode);
    out.goal.targets.push_back(
        {.name = mode.mode.name, .guide = mode.guide, .frequency_hz = mode.mode.frequency_hz, .loss = mode.mode.loss});
  }
  const Eigen::Index kept =
      std::min<Eigen::Index>(last + 1 + static_cast<Eigen::Index>(spare), result.modal.frequencies_hz.size());
  out.goal.guide = mode_shapes(result.model, result.system.dofs, result.modal.shapes.leftCols(kept));
  out.goal.guide_hz = result.modal.frequencies_hz.head(kept);
}

/// @param source  what gives the losses, as the subject of a sentence
void check_losses(const NamedGoal& goal, const std::string& source)
{
  if (!goal.goal.loss)
    return;
  for (const ComparedMode& target : goal.targets)
    if (!(target.loss.value_or(0.0) > 0.0))
      throw DesignError(message("wanted.loss = ", *goal.goal.loss, ": ", source, ' ', target.loss ? "0 %" : "nothing",
                                " for mode ", target.number, target.name.empty() ? "" : " (" + target.name + ')',
                                "; give it a loss, or leave wanted.loss out"));
}

} // namespace

NamedGoal match_goal(const MatchProblem& problem)
{
  const int count = std::max(least_modes, problem.wanted.count);
  NamedGoal out{.title = {}, .targets = {}, .laminate = {}, .mass = 0.0, .goal = {}};
  out.goal.least_mass = problem.wanted.least_mass;
  out.goal.most_mass = problem.wanted.most_mass;
  out.goal.likeness = problem.wanted.likeness;
  out.goal.loss = problem.wanted.loss;
  if (!problem.measured.empty())
  {
    const MeasuredModes measured = read_measured_modes(problem.measured);
    const int searched = num_searched(std::max(count, measured.modes.back().number));
    const Design design = checked_design(problem.start, searched);
    const ModesResult result = compute_modes(design, searched);
    const PairedModes paired = pair_measured(measured, result);
    out.title = measured.title;
    add_guide(result, wanted_modes(measured_modes(measured, paired), problem.wanted), out);
    check_losses(out, problem.measured.filename().string() + " gives in loss_percent");
    return out;
  }
  const DesignDocument document =
      DesignDocument::from_file(problem.reference, {.folder = {}, .allow_outside = problem.allow_outside});
  const ModesResult result = compute_modes(checked_design(document, count), count);
  out.title = result.design.title;
  out.laminate = result.design.laminate;
  out.mass = result.system.mass;
  add_guide(result, wanted_modes(own_modes(result), problem.wanted), out);
  check_losses(out, "the materials of " + problem.reference.filename().string() + " give");
  return out;
}

} // namespace plate
