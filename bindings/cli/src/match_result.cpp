// SPDX-License-Identifier: MPL-2.0
#include "match_result.h"

#include "command_line.h"
#include "load_result.h"
#include "match_goal.h"
#include "stopwatch.h"

#include <plate/core/error.h>
#include <plate/design/build_model.h>
#include <plate/design/design_model.h>

#include <algorithm>
#include <cmath>
#include <exception>
#include <limits>
#include <map>
#include <utility>

namespace plate
{
namespace
{

/// A plate that cannot be loaded must not cost the result of the whole search.
MatchMargin weakest(const DesignDocument& document)
try
{
  const LoadResult loaded = compute_load(document.design(), document.load(), LoadSetup().rim);
  MatchMargin out{.margin = std::numeric_limits<double>::infinity(), .load_case = {}};
  for (const LoadCase& load : loaded.study.cases)
    if (load.strength.margin < out.margin)
      out = {.margin = load.strength.margin, .load_case = load.name};
  return out;
}
catch (const std::exception& error)
{
  return {.margin = std::numeric_limits<double>::quiet_NaN(), .load_case = error.what()};
}

DesignDocument design_of(const MatchProblem& problem, const MatchCandidate& candidate)
{
  DesignDocument design = problem.start;
  design.set_layup(candidate.laminate);
  if (!candidate.patches.empty())
    design.set_patches(candidate.patches);
  for (std::size_t k = 0; k < candidate.shape.size(); ++k)
    design.set_number(problem.free[k].key, candidate.shape[k]);
  return design;
}

/// Margins of designs, each computed once.
class Margins
{
public:
  const MatchMargin& of(const DesignDocument& design)
  {
    const auto [place, is_new] = known_.try_emplace(design.text());
    if (is_new)
      place->second = weakest(design);
    return place->second;
  }

private:
  std::map<std::string, MatchMargin> known_;
};

/// Of laminates that were all refused, the one nearest to what is wanted is given all the same.
void give_nearest(MatchOutcome& out)
{
  if (!out.result.candidates.empty() || out.result.refused.empty())
    return;
  std::size_t nearest = 0;
  for (std::size_t i = 1; i < out.refused.size(); ++i)
    if (std::isnan(out.refused[nearest].margin) || out.refused[i].margin > out.refused[nearest].margin)
      nearest = i;
  out.result.candidates.push_back(out.result.refused[nearest]);
}

std::vector<std::string> free_keys(const MatchProblem& problem)
{
  std::vector<std::string> keys;
  for (const FreeKey& free : problem.free)
    keys.push_back(free.key);
  return keys;
}

/// The free keys as parameters of a design, from where they are now.
MatchShape free_shape(const MatchProblem& problem, DesignModel& design)
{
  MatchShape shape{.plate = &design};
  for (const FreeKey& free : problem.free)
  {
    shape.start.push_back(std::clamp(problem.start.number(free.key), free.low, free.high));
    shape.low.push_back(free.low);
    shape.high.push_back(free.high);
  }
  return shape;
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
  DesignModel shaped(out.problem.start, free_keys(out.problem));
  MatchOptions options{.seed = seed, .progress = goes_on};
  Margins margins;
  if (const std::optional<double> least = out.problem.wanted.least_margin)
    options.accepts = [&out, &margins, least](const MatchCandidate& candidate)
    {
      const MatchMargin& margin = margins.of(design_of(out.problem, candidate));
      if (margin.margin >= *least)
        return true;
      out.refused.push_back(margin);
      return false;
    };
  out.result = match_layups(start, out.problem.supplies, goal.goal, options, free_shape(out.problem, shaped));
  give_nearest(out);
  for (MatchCandidate& candidate : out.result.candidates)
    solve_candidate(build_model(design_of(out.problem, candidate).design()), goal.goal, candidate);
  out.result.num_full += out.result.candidates.size();
  keep_front(out.result.candidates);
  for (std::size_t i = 0; i < out.result.candidates.size(); ++i)
  {
    DesignDocument design = design_of(out.problem, out.result.candidates[i]);
    if (out.problem.wanted.least_margin)
      out.margins.push_back(margins.of(design));
    design.set("title", message('"', out.problem.title, ": laminate ", i + 1, '"'));
    out.designs.push_back(std::move(design));
  }
  out.seconds = watch.seconds();
  return out;
}

} // namespace plate
