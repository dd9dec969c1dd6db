// SPDX-License-Identifier: MPL-2.0
#include "layup_search.h"

#include <plate/core/error.h>
#include <plate/core/parallel.h>
#include <plate/core/threads.h>

#include <algorithm>
#include <iterator>
#include <utility>

namespace plate::match
{

namespace
{

constexpr std::size_t num_terms = 60;     // laminates that terms are chosen from
constexpr std::size_t num_snapshots = 10; // learned before the search
constexpr std::size_t num_first = 600;    // solved before the first estimate: several for each weight of it
constexpr std::size_t num_rounds = 4;     // of estimating, solving and learning
constexpr double turned_sample = 0.1;     // of a ply [rad]
constexpr std::size_t num_batch = 500;    // solved between two looks at the clock

/// Mass of the plate under two laminates of one thickness tells what the laminate has to do with it.
PlateMass plate_mass(const Model& start, const StackSpace& space)
{
  Laminate light = {{space.choices().front().ply}};
  Laminate heavy = light;
  heavy.plies.front().material.density *= 2.0;
  const double light_mass = assemble(with_laminate(start, light)).mass;
  const double heavy_mass = assemble(with_laminate(start, heavy)).mass;
  const double area = (heavy_mass - light_mass) / areal_mass(light);
  return {.fixed = light_mass - area * areal_mass(light), .area = area};
}

/// A value that three in a thousand exceed, never negative.
double rarely_exceeded(std::vector<double> values)
{
  constexpr double rest = 0.997;
  const auto place = static_cast<std::ptrdiff_t>(rest * static_cast<double>(values.size() - 1));
  std::nth_element(values.begin(), values.begin() + place, values.end());
  return std::max(0.0, values[static_cast<std::size_t>(place)]);
}

} // namespace

MassLimits mass_limits(const MatchGoal& goal)
{
  MassLimits limits;
  limits.least = goal.least_mass.value_or(limits.least);
  limits.most = goal.most_mass.value_or(limits.most);
  return limits;
}

Laminate with_turned(Laminate laminate, std::size_t ply, double turn, bool symmetric)
{
  const auto turn_ply = [&](std::size_t i)
  { laminate.plies[i].angle = Angle::radians(laminate.plies[i].angle.in_radians() + turn); };
  const std::size_t mirrored = laminate.plies.size() - 1 - ply;
  turn_ply(ply);
  if (symmetric && mirrored != ply)
    turn_ply(mirrored);
  return laminate;
}

LayupSearch::LayupSearch(const Model& start, const StackSupplies& supplies, const MatchGoal& goal,
                         const MatchOptions& options, const MatchShape& shape)
    : start_(start), goal_(goal), options_(options), supplies_(supplies), space_(supplies), targets_(goal)
{
  if (!shape.start.empty())
    shape_.emplace(shape, targets_);
}

bool LayupSearch::goes_on(const std::string& stage)
{
  if (result_.complete && options_.progress && !options_.progress(stage))
  {
    result_.complete = false;
    result_.stopped_at = stage;
  }
  return result_.complete;
}

/// Stacks as unlike each other as can be found, the first near the middle of all.
std::vector<std::size_t> LayupSearch::spread_out(std::size_t count) const
{
  const std::vector<PoolStack>& stacks = pool_->stacks;
  constexpr std::size_t most_looked_at = 5000;
  const std::size_t step = 1 + stacks.size() / most_looked_at;
  std::vector<std::size_t> numbers;
  for (std::size_t i = 0; i < stacks.size(); i += step)
    numbers.push_back(i);
  Eigen::MatrixXd traits(stacks.front().traits.values.size(), static_cast<Eigen::Index>(numbers.size()));
  for (std::size_t i = 0; i < numbers.size(); ++i)
    traits.col(static_cast<Eigen::Index>(i)) = stacks[numbers[i]].traits.values;
  const Eigen::VectorXd low = traits.rowwise().minCoeff();
  const Eigen::VectorXd range = (traits.rowwise().maxCoeff() - low).cwiseMax(1e-12);
  traits = range.cwiseInverse().asDiagonal() * (traits.colwise() - low);

  std::vector<std::size_t> out;
  Eigen::RowVectorXd distance = -(traits.colwise() - traits.rowwise().mean().eval()).colwise().norm();
  while (out.size() < std::min(count, numbers.size()))
  {
    Eigen::Index farthest = 0;
    distance.maxCoeff(&farthest);
    const Eigen::RowVectorXd to_new = (traits.colwise() - traits.col(farthest).eval()).colwise().norm();
    distance = out.empty() ? to_new : distance.cwiseMin(to_new).eval();
    out.push_back(numbers[static_cast<std::size_t>(farthest)]);
  }
  return out;
}

void LayupSearch::prepare_model()
{
  std::vector<Laminate> laminates;
  for (const std::size_t i : spread_out(num_terms))
    laminates.push_back(space_.laminate(pool_->stacks[i].stack));
  const std::vector<Laminate> snapshots(
      laminates.begin(), laminates.begin() + static_cast<std::ptrdiff_t>(std::min(num_snapshots, laminates.size())));
  for (std::size_t i = laminates.size(); i-- > 0;) // plies off their angle couple what those at 0 and 90 do not
    for (const std::size_t ply : {std::size_t{0}, laminates[i].plies.size() / 2})
      laminates.push_back(with_turned(laminates[i], ply, turned_sample, supplies_.symmetric));
  modes_.emplace(start_, laminates, targets_.num_modes(), targets_.losses());
  modes_->learn(snapshots);
  targets_.prepare(*modes_, start_);
}

/// Of the best that were not solved those that may be better than all solved of no more mass, if that is all that
/// counts: a stack that is refined, or takes the place of another, need not be.
std::vector<std::size_t> LayupSearch::promising(std::size_t count) const
{
  std::vector<std::size_t> numbers = pool_->best(count, false);
  if (options_.thorough || supplies_.any_angle || options_.accepts || shape_)
    return numbers;
  const std::vector<std::size_t> front = pool_->front();
  const auto beaten = [&](std::size_t number)
  {
    const PoolStack& stack = pool_->stacks[number];
    const auto heavier =
        std::find_if(front.begin(), front.end(), [&](std::size_t i) { return pool_->stacks[i].mass > stack.mass; });
    return heavier != front.begin() && std::min(stack.score - doubt_.cents, stack.score * (1.0 - doubt_.part)) >
                                           pool_->stacks[*std::prev(heavier)].score;
  };
  numbers.erase(std::remove_if(numbers.begin(), numbers.end(), beaten), numbers.end());
  return numbers;
}

/// Solves stacks of the pool on the reduced model.
void LayupSearch::solve(const std::vector<std::size_t>& numbers)
{
  for (std::size_t from = 0; from < numbers.size(); from += num_batch)
  {
    if (!goes_on(message("solving stacks on the reduced model: ", result_.num_reduced, " of ", options_.num_reduced)))
      return;
    const std::size_t count = std::min(num_batch, numbers.size() - from);
    in_parallel(count, num_threads(),
                [&](std::size_t begin, std::size_t end)
                {
                  for (std::size_t i = begin; i < end; ++i)
                  {
                    PoolStack& stack = pool_->stacks[numbers[from + i]];
                    const FoundModes found = targets_.find(modes_->quick(space_.laminate(stack.stack)));
                    stack.values = targets_.values(found);
                    stack.score = targets_.score(stack.values);
                  }
                });
    result_.num_reduced += count;
  }
}

/// Solves the most promising, and takes from them how far estimates may be trusted.
///
/// @return whether there were any
bool LayupSearch::solve_promising(std::size_t count)
{
  constexpr std::size_t least = 100; // fewer tell nothing about the rare ones
  const std::vector<std::size_t> numbers = promising(count);
  std::vector<double> estimates;
  for (const std::size_t i : numbers)
    estimates.push_back(pool_->stacks[i].score);
  solve(numbers);
  if (!result_.complete || numbers.size() < least)
    return !numbers.empty();
  std::vector<double> cents;
  std::vector<double> parts;
  for (std::size_t i = 0; i < numbers.size(); ++i)
  {
    cents.push_back(estimates[i] - pool_->stacks[numbers[i]].score);
    parts.push_back(cents.back() / estimates[i]);
  }
  doubt_ = {.cents = rarely_exceeded(std::move(cents)), .part = rarely_exceeded(std::move(parts))};
  return true;
}

/// Estimates every stack that was not solved from those that were.
void LayupSearch::estimate()
{
  std::vector<const StackTraits*> traits;
  const auto solved = std::find_if(pool_->stacks.begin(), pool_->stacks.end(),
                                   [](const PoolStack& stack) { return stack.values.size() > 0; });
  if (solved == pool_->stacks.end())
    return;
  Eigen::MatrixXd values(static_cast<Eigen::Index>(pool_->stacks.size()), solved->values.size());
  for (const PoolStack& stack : pool_->stacks)
    if (stack.values.size() > 0)
    {
      values.row(static_cast<Eigen::Index>(traits.size())) = stack.values;
      traits.push_back(&stack.traits);
    }
  quick_.fit(traits, values.topRows(static_cast<Eigen::Index>(traits.size())));
  in_parallel(pool_->stacks.size(), num_threads(),
              [&](std::size_t begin, std::size_t end)
              {
                for (std::size_t i = begin; i < end; ++i)
                  if (PoolStack& stack = pool_->stacks[i]; stack.values.size() == 0)
                    stack.score = targets_.score(quick_.values(stack.traits));
              });
}

/// Considers neighbours of the best, where the space is too large to consider all of it.
void LayupSearch::grow()
{
  constexpr std::size_t num_parents = 150;
  constexpr int num_generations = 4;
  const auto most = static_cast<std::size_t>(1.5 * static_cast<double>(options_.num_considered));
  for (int generation = 0; generation < num_generations; ++generation)
  {
    std::vector<Stack> parents;
    for (const bool solved : {false, true})
      for (const std::size_t i : pool_->best(num_parents, solved))
        parents.push_back(pool_->stacks[i].stack);
    const std::size_t before = pool_->stacks.size();
    for (const Stack& parent : parents)
      for (const Stack& neighbour : space_.neighbours(parent))
        if (pool_->num_considered() < most)
          pool_->offer(neighbour);
    for (std::size_t i = before; i < pool_->stacks.size(); ++i)
      pool_->stacks[i].score = targets_.score(quick_.values(pool_->stacks[i].traits));
  }
}

/// Solves neighbours of the front, and theirs if they better it.
void LayupSearch::look_around_front()
{
  constexpr int most_steps = 3;
  std::vector<std::size_t> open;
  for (int step = 0; step < most_steps && (step == 0 || !open.empty()); ++step)
  {
    open.clear();
    for (const std::size_t i : pool_->front())
      for (const Stack& neighbour : space_.neighbours(Stack(pool_->stacks[i].stack)))
        if (const std::optional<std::size_t> number = pool_->offer(neighbour);
            number && pool_->stacks[*number].values.size() == 0)
          open.push_back(*number);
    std::sort(open.begin(), open.end());
    open.erase(std::unique(open.begin(), open.end()), open.end());
    solve(open);
  }
}

void LayupSearch::search()
{
  const std::size_t step = 1 + pool_->stacks.size() / num_first;
  std::vector<std::size_t> first;
  for (std::size_t i = 0; i < pool_->stacks.size(); i += step)
    first.push_back(i);
  solve(first);
  bool found_more = true;
  for (std::size_t round = 0; round < num_rounds && found_more && goes_on("estimating the modes of all stacks");
       ++round)
  {
    estimate();
    if (space_.size() > static_cast<double>(pool_->num_considered()))
      grow();
    const std::size_t left = options_.num_reduced - std::min(options_.num_reduced, result_.num_reduced);
    found_more = solve_promising(left / (num_rounds - round));
    look_around_front();
    if (found_more && goes_on("solving the best in full"))
      learn_best();
    if (round == 0 && shape_ && goes_on("solving the best in other shapes"))
      learn_shape();
  }
  if (!supplies_.any_angle && goes_on("solving the front in full"))
    learn_front();
}

MatchResult LayupSearch::run()
{
  pool_.emplace(space_, plate_mass(start_, space_), mass_limits(goal_));
  if (!goes_on("considering stacks"))
    return result_;
  pool_->fill(options_.num_considered, options_.seed);
  if (pool_->stacks.empty())
  {
    result_.fits = false;
    pool_->widen();
  }
  if (goes_on("building the reduced model"))
  {
    prepare_model();
    search();
    for (const std::vector<Laminate>& alternatives : shown())
      add_first_accepted(alternatives);
    result_.fits = result_.fits && (result_.refused.empty() || !result_.candidates.empty());
  }
  keep_front(result_.candidates);
  result_.num_considered = pool_->num_considered();
  result_.num_full = (modes_ ? modes_->num_full() : 0) + (shape_ ? shape_->num_solved() : 0);
  result_.reach = pool_->reach();
  return std::move(result_);
}

} // namespace plate::match
