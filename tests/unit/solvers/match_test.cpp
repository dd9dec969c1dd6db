// SPDX-License-Identifier: MPL-2.0
#include "match_trial.h"

#include <doctest/doctest.h>

#include <chrono>
#include <iostream>

namespace plate::test
{
namespace
{

double seconds_since(std::chrono::steady_clock::time_point start)
{
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

TEST_CASE("a hidden stack is found again")
{
  const StackSupplies supplies = workshop();
  for (const unsigned seed : {1U, 2U})
  {
    const Laminate hidden = hidden_stack(supplies, seed);
    const MatchGoal goal = goal_of(laminated_plate(hidden), 8);
    const Model start = laminated_plate(hidden_stack(supplies, seed + 100));
    const auto begin = std::chrono::steady_clock::now();
    MatchOptions options;
    options.progress = [&](const std::string& stage)
    {
      std::cerr << seconds_since(begin) << " " << stage << '\n';
      return true;
    };
    const MatchResult result = match_layups(start, supplies, goal, options);
    std::cerr << seconds_since(begin) << " s, considered " << result.num_considered << " reduced " << result.num_reduced << " full " << result.num_full << '\n';
    for (const MatchCandidate& c : result.candidates)
    {
      std::cerr << c.mass * 1e3 << " g " << c.mismatch << " cents:";
      for (const MatchedMode& m : c.modes)
        std::cerr << ' ' << m.cents << '(' << 1200 * std::log2(m.reduced_hz / m.frequency_hz) << ')';
      std::cerr << '\n';
    }
    CHECK(result.num_considered >= 100000);
    CHECK(result.num_reduced >= 20000);
    CHECK(found_again(result, goal) < 2.0);
  }
}

} // namespace
} // namespace plate::test
