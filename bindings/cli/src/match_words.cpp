// SPDX-License-Identifier: MPL-2.0
#include "match_words.h"

#include "text_table.h"

#include <plate/core/error.h>
#include <plate/core/units.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace plate
{
namespace
{

std::string ply_words(const Ply& ply)
{
  const double degrees = std::round(ply.angle.in_radians() * 1800.0 / std::numbers::pi) / 10.0;
  const std::string sheet = message(ply.material.name, ' ', compact(ply.thickness * millimetres, 4));
  return ply.material.core && degrees == 0.0 ? sheet : message(compact(degrees + 0.0, 4), ' ', sheet);
}

bool same(const Ply& a, const Ply& b)
{
  return a.material.name == b.material.name && a.thickness == b.thickness &&
         a.angle.in_radians() == b.angle.in_radians();
}

bool symmetric(const std::vector<Ply>& plies)
{
  return std::equal(plies.begin(), plies.end(), plies.rbegin(), same);
}

std::string range_words(const Reach& reach, int decimals)
{
  return message(fixed(reach.least, decimals), " to ", fixed(reach.greatest, decimals));
}

/// A ratio of the reference and how far the stacks reach, if they do not reach it.
void add_ratio(std::vector<std::string>& out, const std::string& what, double wanted, const Reach& reach)
{
  if (wanted < reach.least || wanted > reach.greatest)
    out.push_back(message(what, ": the reference has ", fixed(wanted, 2), " (flat, mid-plate), the stacks reach ",
                          range_words(reach, 2)));
}

} // namespace

std::string layup_code(const Laminate& laminate)
{
  const std::vector<Ply>& plies = laminate.plies;
  const bool half = plies.size() > 1 && symmetric(plies);
  const bool single = half && plies.size() % 2 == 1;
  const std::size_t count = half ? (plies.size() + 1) / 2 : plies.size();
  std::string out = "[";
  for (std::size_t i = 0; i < count; ++i)
    out += message(i == 0 ? "" : "/", single && i + 1 == count ? "~" : "", ply_words(plies[i]));
  return out + (half ? "]s" : "]");
}

std::string shape_words(const MatchOutcome& outcome, std::size_t candidate)
{
  const std::vector<double>& shape = outcome.result.candidates[candidate].shape;
  std::string out;
  for (std::size_t k = 0; k < shape.size(); ++k)
  {
    const std::string& key = outcome.problem.free[k].key;
    const std::string unit = outcome.problem.start.unit(key);
    out += message("; ", key, " = ", compact(shape[k], 4), unit.empty() ? "" : " ", unit);
  }
  return out;
}

std::string patch_words(const MatchCandidate& candidate)
{
  std::string out;
  for (std::size_t i = 0; i < candidate.patches.size(); ++i)
    out += candidate.patches[i].plies.empty() ? message("; without patch ", i + 1)
                                              : message("; patch ", i + 1, ' ', layup_code(candidate.patches[i]));
  return out;
}

std::vector<std::string> out_of_reach(const MatchOutcome& outcome)
{
  std::vector<std::string> out;
  if (!outcome.reference_laminate || outcome.result.candidates.empty())
    return out;
  const BendingRatios wanted = bending_ratios(*outcome.reference_laminate);
  const MatchReach& reach = outcome.result.reach;
  add_ratio(out, "stiffness along over across, D11/D22", wanted.cross, reach.cross_ratio);
  add_ratio(out, "stiffness in twist, (D12 + 2 D66)/sqrt(D11 D22)", wanted.twist, reach.twist_ratio);
  if (outcome.reference_mass < reach.mass.least || outcome.reference_mass > reach.mass.greatest)
    out.push_back(message("mass: the reference has ", fixed(outcome.reference_mass * grams, 1),
                          " g, plates of the stacks ", fixed(reach.mass.least * grams, 1), " to ",
                          fixed(reach.mass.greatest * grams, 1), " g"));
  return out;
}

std::string nothing_found_words(const MatchOutcome& outcome)
{
  return message("No laminate was found: the search was stopped at \"", outcome.result.stopped_at, "\" after ",
                 fixed(outcome.seconds, 1),
                 " s. Give it more time (--time): the first laminates are there once the reduced ",
                 "model is built and some stacks are solved on it, usually within a minute.");
}

std::string no_fit_words(const MatchOutcome& outcome)
{
  if (!outcome.margins.empty() && !(outcome.margins.front().margin >= *outcome.problem.wanted.least_margin))
    return message("Nothing fits: none of the ", outcome.refused.size(),
                   " laminates loaded has wanted.margin.min = ", compact(*outcome.problem.wanted.least_margin),
                   ". The nearest:");
  const Reach& mass = outcome.result.reach.mass;
  return message("Nothing fits: no stack keeps to wanted.mass_g; plates of what is available have ",
                 fixed(mass.least * grams, 1), " to ", fixed(mass.greatest * grams, 1), " g. The nearest:");
}

} // namespace plate
