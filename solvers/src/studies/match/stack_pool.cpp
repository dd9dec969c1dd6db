// SPDX-License-Identifier: MPL-2.0
#include "stack_pool.h"

#include <algorithm>
#include <numeric>

namespace plate::match
{

namespace
{

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr Reach nothing = {infinity, -infinity};

void widen_to(Reach& reach, double value)
{
  reach = {std::min(reach.least, value), std::max(reach.greatest, value)};
}

} // namespace

StackPool::StackPool(const StackSpace& space, const PlateMass& plate, const MassLimits& limits)
    : space_(space), plate_(plate),
      limits_(limits), reach_{.mass = nothing, .cross_ratio = nothing, .twist_ratio = nothing}
{
}

std::optional<std::size_t> StackPool::offer(const Stack& stack)
{
  if (!space_.allowed(stack))
    return std::nullopt;
  const auto [place, is_new] = seen_.try_emplace(stack);
  if (!is_new)
    return place->second;
  StackTraits traits = stack_traits(space_, stack);
  const double mass = plate_.fixed + plate_.area * traits.areal_mass;
  widen_to(reach_.mass, mass);
  if (mass < limits_.least || mass > limits_.most)
    return std::nullopt;
  widen_to(reach_.cross_ratio, traits.cross_ratio);
  widen_to(reach_.twist_ratio, traits.twist_ratio);
  place->second = stacks.size();
  stacks.push_back({.stack = stack, .traits = std::move(traits), .mass = mass});
  return place->second;
}

void StackPool::fill(std::size_t count, std::uint64_t seed)
{
  if (space_.size() <= static_cast<double>(count))
  {
    space_.for_each([this](const Stack& stack) { offer(stack); });
    return;
  }
  constexpr std::size_t tries = 20; // for each stack: some are drawn twice, some are not balanced
  std::mt19937_64 random(seed);
  for (std::size_t i = 0; i < tries * count && seen_.size() < count; ++i)
    offer(space_.random(random));
}

void StackPool::widen()
{
  constexpr double slack = 0.02; // a few stacks to choose from
  if (reach_.mass.least > limits_.most)
    limits_ = {.least = 0.0, .most = (1.0 + slack) * reach_.mass.least};
  else if (reach_.mass.greatest < limits_.least)
    limits_ = {.least = (1.0 - slack) * reach_.mass.greatest, .most = infinity};
  else
    limits_ = {}; // none in between
  std::vector<Stack> again;
  for (const auto& [stack, number] : std::exchange(seen_, {}))
    again.push_back(stack);
  std::sort(again.begin(), again.end(),
            [](const Stack& a, const Stack& b)
            { return std::tie(a.layers, a.core, a.single_middle) < std::tie(b.layers, b.core, b.single_middle); });
  for (const Stack& stack : again)
    offer(stack);
}

std::vector<std::size_t> StackPool::best(std::size_t count, bool solved) const
{
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < stacks.size(); ++i)
    if ((stacks[i].values.size() > 0) == solved)
      order.push_back(i);
  const auto better = [&](std::size_t a, std::size_t b)
  { return std::tie(stacks[a].score, a) < std::tie(stacks[b].score, b); };
  const auto lighter = [&](std::size_t a, std::size_t b)
  { return std::tie(stacks[a].mass, a) < std::tie(stacks[b].mass, b); };
  if (order.size() <= count)
    return order;

  constexpr std::size_t num_levels = 16;
  std::vector<bool> taken(stacks.size(), false);
  std::vector<std::size_t> out;
  const auto take = [&](std::vector<std::size_t> from, std::size_t most)
  {
    std::sort(from.begin(), from.end(), better);
    for (std::size_t i = 0; i < from.size() && most > 0; ++i)
      if (!taken[from[i]])
      {
        taken[from[i]] = true;
        out.push_back(from[i]);
        --most;
      }
  };
  take(order, count / 2);
  std::sort(order.begin(), order.end(), lighter);
  for (std::size_t level = 0; level < num_levels; ++level)
  {
    const auto at = [&](std::size_t l)
    { return order.begin() + static_cast<std::ptrdiff_t>(order.size() * l / num_levels); };
    take({at(level), at(level + 1)}, (count - out.size()) / (num_levels - level));
  }
  return out;
}

std::vector<std::size_t> StackPool::front() const
{
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < stacks.size(); ++i)
    if (stacks[i].values.size() > 0)
      order.push_back(i);
  std::sort(order.begin(), order.end(),
            [&](std::size_t a, std::size_t b)
            { return std::tie(stacks[a].mass, stacks[a].score, a) < std::tie(stacks[b].mass, stacks[b].score, b); });
  std::vector<std::size_t> out;
  double least = infinity;
  for (const std::size_t i : order)
    if (stacks[i].score < least)
    {
      least = stacks[i].score;
      out.push_back(i);
    }
  return out;
}

} // namespace plate::match
