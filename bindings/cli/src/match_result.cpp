// SPDX-License-Identifier: MPL-2.0
#include "match_result.h"

#include "command_line.h"
#include "load_result.h"
#include "match_goal.h"
#include "stopwatch.h"

#include <plate/core/error.h>
#include <plate/design/build_model.h>

#include <limits>
#include <utility>

namespace plate
{
namespace
{

MatchMargin weakest(const DesignDocument& document)
{
  const LoadResult loaded = compute_load(document.design(), document.load(), LoadRequest().rim);
  MatchMargin out{.margin = std::numeric_limits<double>::infinity(), .load_case = {}};
  for (const LoadCase& load : loaded.study.cases)
    if (load.strength.margin < out.margin)
      out = {.margin = load.strength.margin, .load_case = load.name};
  return out;
}

} // namespace

MatchOutcome compute_match(MatchProblem problem, std::uint64_t seed,
                           const std::function<bool(const std::string& stage)>& goes_on)
{
  const Stopwatch watch;
  NamedGoal goal = match_goal(problem);
  MatchOutcome out{.problem = std::move(problem),
                   .reference = std::move(goal.title),
                   .targets = std::move(goal.targets),
                   .reference_laminate = std::move(goal.laminate),
                   .reference_mass = goal.mass};
  const Model start = build_model(out.problem.start.design());
  out.result = match_layups(start, out.problem.supplies, goal.goal, {.seed = seed, .progress = goes_on});
  for (std::size_t i = 0; i < out.result.candidates.size(); ++i)
  {
    DesignDocument design = out.problem.start;
    design.set_layup(out.result.candidates[i].laminate);
    design.set("title", message('"', out.problem.title, ": laminate ", i + 1, '"'));
    out.designs.push_back(std::move(design));
    if (out.problem.wanted.least_margin)
      out.margins.push_back(weakest(out.designs.back()));
  }
  out.seconds = watch.seconds();
  return out;
}

} // namespace plate
