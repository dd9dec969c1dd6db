// SPDX-License-Identifier: MPL-2.0
#include "layup_search.h"

#include <algorithm>
#include <vector>

namespace plate::match
{

namespace
{

constexpr std::size_t num_learned = 3;   // in each round
constexpr std::size_t num_renewed = 200; // solved anew after a round, with what was learned

} // namespace

/// Solves those of some stacks in full that were not, so that the reduced model is good there, and the best anew.
void LayupSearch::learn(const std::vector<std::size_t>& numbers)
{
  std::vector<Laminate> laminates;
  for (const std::size_t i : numbers)
    if (const Stack& stack = pool_->stacks[i].stack; learned_.insert(stack).second)
      laminates.push_back(space_.laminate(stack));
  if (laminates.empty())
    return;
  modes_->learn(laminates);
  targets_.prepare(*modes_, start_);
  solve(pool_->best(num_renewed, true));
}

/// Learns both ends of the front and some between; of those known before their neighbours.
void LayupSearch::learn_best()
{
  const std::vector<std::size_t> front = pool_->front();
  std::vector<std::size_t> numbers;
  const auto is_new = [&](std::size_t i) {
    return !learned_.contains(pool_->stacks[i].stack) && std::find(numbers.begin(), numbers.end(), i) == numbers.end();
  };
  for (std::size_t k = 0; k < num_learned; ++k)
  {
    const std::size_t from = (front.size() - 1) * (num_learned - 1 - k) / (num_learned - 1);
    for (std::size_t step = 0; step < front.size(); ++step)
      if (const std::size_t i = front[(from + step) % front.size()]; is_new(i))
      {
        numbers.push_back(i);
        break;
      }
  }
  learn(numbers);
}

/// Learns what would be shown, so that no error of the reduced model decides what is.
void LayupSearch::learn_front()
{
  constexpr int most_passes = 2; // others may take the place of what turns out worse
  for (int pass = 0; pass < most_passes; ++pass)
  {
    const std::vector<std::size_t> front = pool_->front();
    const std::size_t count = std::min(options_.num_shown, front.size());
    std::vector<std::size_t> shown;
    for (std::size_t k = 0; k < count; ++k)
      shown.push_back(front[front.size() - 1 - k * front.size() / count]);
    learn(shown);
  }
}

/// Takes the effect of the shape from the best laminate, and lets every stack have its best shape.
void LayupSearch::learn_shape()
{
  const PoolStack& best = pool_->stacks[pool_->front().back()];
  shape_->measure(space_.laminate(best.stack),
                  best.values.head(static_cast<Eigen::Index>(goal_.targets.size())).array().exp());
  targets_.allow_shifts(shape_->shifts());
  for (PoolStack& stack : pool_->stacks)
    if (stack.values.size() > 0)
      stack.score = targets_.score(stack.values);
}

} // namespace plate::match
