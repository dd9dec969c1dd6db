// SPDX-License-Identifier: MPL-2.0
#include "angle_refinement.h"

#include "least_value.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace plate::match
{

namespace
{

constexpr double widest_turn = 15.0 * std::numbers::pi / 180.0; // between neighbours of the angles searched

/// A ply that turns with a variable, by the same amount or the opposite.
struct TurningPly
{
  std::size_t ply;
  double sense;
};

/// Plies that turn together, one group for each variable.
using TurningGroups = std::vector<std::vector<TurningPly>>;

bool along_or_across(double angle)
{
  return std::abs(std::sin(2.0 * angle)) < 1e-9;
}

TurningGroups turning_groups(const Laminate& laminate, const StackSupplies& supplies)
{
  const std::vector<Ply>& plies = laminate.plies;
  const auto angle = [&](std::size_t i) { return plies[i].angle.in_radians(); };
  TurningGroups groups;
  const auto belongs = [&](std::size_t i, std::size_t first)
  {
    if (supplies.balanced)
      return plies[i].material.name == plies[first].material.name &&
             std::abs(std::abs(angle(i)) - std::abs(angle(first))) < 1e-9;
    return supplies.symmetric && i == plies.size() - 1 - first;
  };
  for (std::size_t i = 0; i < plies.size(); ++i)
  {
    if (plies[i].material.core || (supplies.balanced && along_or_across(angle(i))))
      continue;
    const auto group = std::find_if(groups.begin(), groups.end(),
                                    [&](const std::vector<TurningPly>& g) { return belongs(i, g.front().ply); });
    if (group == groups.end())
      groups.push_back({{i, 1.0}});
    else
      group->push_back({i, angle(i) * angle(group->front().ply) < 0.0 ? -1.0 : 1.0});
  }
  return groups;
}

Laminate turned(Laminate laminate, const TurningGroups& groups, const std::vector<double>& turns)
{
  for (std::size_t g = 0; g < groups.size(); ++g)
    for (const TurningPly& turning : groups[g])
    {
      Angle& angle = laminate.plies[turning.ply].angle;
      angle = Angle::radians(angle.in_radians() + turning.sense * turns[g]);
    }
  return laminate;
}

} // namespace

Laminate refined_angles(const Laminate& laminate, const StackSupplies& supplies,
                        const std::function<double(const Laminate&)>& mismatch)
{
  const TurningGroups groups = turning_groups(laminate, supplies);
  if (groups.empty())
    return laminate;
  const std::vector<double> limit(groups.size(), widest_turn);
  const std::vector<double> turns =
      least_value([&](const std::vector<double>& x) { return mismatch(turned(laminate, groups, x)); },
                  {.low = std::vector<double>(groups.size(), -widest_turn),
                   .high = limit,
                   .start = std::vector<double>(groups.size(), 0.0)});
  return turned(laminate, groups, turns);
}

} // namespace plate::match
