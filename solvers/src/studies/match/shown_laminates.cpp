// SPDX-License-Identifier: MPL-2.0
// The last part of a search: from stacks solved on the reduced model to laminates solved in full.
#include "angle_refinement.h"
#include "layup_search.h"

#include <plate/core/parallel.h>
#include <plate/core/threads.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <tuple>
#include <utility>

namespace plate::match
{

namespace
{

constexpr std::size_t most_learned = 6; // of the refined laminates

bool same_plies(const std::vector<Ply>& a, const std::vector<Ply>& b)
{
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](const Ply& p, const Ply& q)
                    {
                      return p.material.name == q.material.name && p.thickness == q.thickness &&
                             p.angle.in_radians() == q.angle.in_radians();
                    });
}

/// Those that no other beats in both mass and score, ascending in score.
std::vector<FoundLaminate> front_of(std::vector<FoundLaminate> laminates)
{
  std::stable_sort(laminates.begin(), laminates.end(),
                   [](const FoundLaminate& a, const FoundLaminate& b)
                   { return std::tie(a.score, a.mass) < std::tie(b.score, b.mass); });
  std::vector<FoundLaminate> front;
  for (FoundLaminate& laminate : laminates)
    if (front.empty() || laminate.mass < front.back().mass)
      front.push_back(std::move(laminate));
  return front;
}

/// As many as asked for, evenly spaced, the first among them.
std::vector<FoundLaminate> thinned(const std::vector<FoundLaminate>& laminates, std::size_t most)
{
  const std::size_t count = std::min(most, laminates.size());
  std::vector<FoundLaminate> out;
  for (std::size_t k = 0; k < count; ++k)
    out.push_back(laminates[k * laminates.size() / count]);
  return out;
}

/// Adds the best of a level of mass to the one that stands for it.
void add_alternatives(std::vector<FoundLaminate> laminates, const Reach& level, std::vector<Laminate>& out)
{
  constexpr std::size_t most = 6; // each is solved and loaded in full
  const std::vector<Ply> first = out.front().plies;
  std::stable_sort(laminates.begin(), laminates.end(),
                   [](const FoundLaminate& a, const FoundLaminate& b) { return a.score < b.score; });
  for (FoundLaminate& one : laminates)
    if (out.size() < most && one.mass > level.least && one.mass <= level.greatest &&
        !same_plies(one.laminate.plies, first))
      out.push_back(std::move(one.laminate));
}

} // namespace

double LayupSearch::score(const Laminate& laminate) const
{
  return targets_.score(targets_.values(targets_.find(modes_->quick(laminate))));
}

/// The best of the pool at each level of mass.
std::vector<FoundLaminate> LayupSearch::found()
{
  const std::size_t count = options_.accepts ? 160 : 32; // enough for each level of mass, if some are refused
  std::vector<std::size_t> numbers = pool_->best(count, true);
  for (const std::size_t i : pool_->front())
    if (std::find(numbers.begin(), numbers.end(), i) == numbers.end())
      numbers.push_back(i);
  std::vector<FoundLaminate> out;
  for (const std::size_t i : numbers)
    out.push_back({.laminate = space_.laminate(pool_->stacks[i].stack),
                   .mass = pool_->stacks[i].mass,
                   .score = pool_->stacks[i].score});
  return out;
}

/// The same with plies turned to the angles that suit best.
std::vector<FoundLaminate> LayupSearch::refined(const std::vector<FoundLaminate>& laminates) const
{
  std::vector<FoundLaminate> out = laminates;
  in_parallel(out.size(), num_threads(),
              [&](std::size_t begin, std::size_t end)
              {
                for (std::size_t i = begin; i < end; ++i)
                {
                  out[i].laminate = refined_angles(out[i].laminate, supplies_,
                                                   [this](const Laminate& laminate) { return score(laminate); });
                  out[i].score = score(out[i].laminate);
                }
              });
  return out;
}

/// Laminates that no other beats on the reduced model, thinned evenly to as many as may be shown, the best among them;
/// each with others that may take its place.
std::vector<std::vector<Laminate>> LayupSearch::shown()
{
  std::vector<FoundLaminate> laminates = found();
  if (supplies_.any_angle && goes_on("refining angles"))
  {
    laminates = refined(laminates);
    std::vector<Laminate> best;
    for (const FoundLaminate& one : front_of(laminates))
      best.push_back(one.laminate);
    best.resize(std::min(best.size(), most_learned));
    modes_->learn(best);
    targets_.prepare(*modes_, start_);
    laminates = refined(laminates);
  }
  const std::vector<FoundLaminate> front = thinned(front_of(laminates), options_.num_shown);
  std::vector<std::vector<Laminate>> out;
  for (std::size_t k = 0; k < front.size(); ++k)
  {
    out.push_back({front[k].laminate});
    if (options_.accepts)
      add_alternatives(laminates,
                       {.least = k + 1 < front.size() ? front[k + 1].mass : 0.0,
                        .greatest = k == 0 ? std::numeric_limits<double>::infinity() : front[k].mass},
                       out.back());
  }
  return out;
}

MatchSensitivity LayupSearch::sensitivity(const Laminate& laminate) const
{
  constexpr double turn = 2.0 * std::numbers::pi / 180.0;
  constexpr double thicker = 1.03;
  const Eigen::VectorXd before = targets_.find(modes_->quick(laminate)).frequencies_hz;
  const auto change = [&](const Laminate& changed)
  {
    const Eigen::VectorXd after = targets_.find(modes_->quick(changed)).frequencies_hz;
    double greatest = 0.0;
    for (Eigen::Index t = 0; t < after.size(); ++t)
      if (const double cents = std::abs(1200.0 * std::log2(after(t) / before(t))); cents > greatest)
        greatest = cents;
    return greatest;
  };
  MatchSensitivity out;
  Laminate thick = laminate;
  for (std::size_t i = 0; i < laminate.plies.size(); ++i)
  {
    if (laminate.plies[i].material.core)
      continue;
    thick.plies[i].thickness *= thicker;
    for (const double side : {-turn, turn})
    {
      const double cents = change(with_turned(laminate, i, side, supplies_.symmetric));
      if (cents > out.turned_cents)
      {
        out.turned_cents = cents;
        out.turned_ply = i;
      }
    }
  }
  out.thicker_cents = change(thick);
  return out;
}

MatchCandidate LayupSearch::candidate(const Laminate& laminate, const Model& plate, const FullModes& full) const
{
  MatchCandidate out{.laminate = laminate, .mass = full.mass, .mismatch = 0.0, .modes = {}};
  const FoundModes reduced = targets_.find(modes_->quick(laminate));
  targets_.describe(targets_.find(plate, modes_->dofs(), full.modal, targets_.losses()), reduced.frequencies_hz, out);
  out.sensitivity = sensitivity(laminate);
  return out;
}

/// A laminate with plies turned so that it suits best in the shape that is then best for it.
Laminate LayupSearch::refined_in_shape(const Laminate& laminate) const
{
  return refined_angles(laminate, supplies_,
                        [this](const Laminate& turned)
                        {
                          const FoundModes found = targets_.find(modes_->quick(turned));
                          return targets_.shifted_score(targets_.values(found),
                                                        shape_->shift(shape_->best(found.frequencies_hz)));
                        });
}

/// Solves a laminate in full, in the shape of the start and in those that suit it better.
///
/// The effect of the shape is measured once; each full solve then corrects it where the search has come to.
MatchCandidate LayupSearch::solved_candidate(Laminate laminate)
{
  constexpr int most_corrections = 6;
  constexpr double good = 0.5; // no one hears it [cents]
  const Model plate = modes_->model(laminate);
  MatchCandidate best = candidate(laminate, plate, modes_->full(plate));
  if (!shape_ || shape_->num_solved() == 0)
    return best;
  shape_->measure(laminate, targets_.find(modes_->quick(laminate)).frequencies_hz);
  for (int i = 0; i < most_corrections && best.score > good; ++i)
  {
    if (i > 0 && supplies_.any_angle)
      laminate = refined_in_shape(laminate);
    const Eigen::VectorXd at_start = targets_.find(modes_->quick(laminate)).frequencies_hz;
    const std::vector<double> point = shape_->best(at_start);
    const Model shaped = shape_->model(laminate, point);
    const FullModes there = modes_->full(shaped);
    MatchCandidate other = candidate(laminate, shaped, there);
    shape_->correct(point, at_start,
                    targets_.find(shaped, modes_->dofs(), there.modal, Losses::left_out).frequencies_hz);
    other.shape = point;
    if (other.score < best.score)
      best = std::move(other);
  }
  return best;
}

/// The first that is not refused is shown.
void LayupSearch::add_first_accepted(const std::vector<Laminate>& alternatives)
{
  for (const Laminate& laminate : alternatives)
  {
    MatchCandidate one = with_best_patches(solved_candidate(laminate));
    if (!options_.accepts || options_.accepts(one))
    {
      result_.candidates.push_back(std::move(one));
      return;
    }
    result_.refused.push_back(std::move(one));
    if (!goes_on("solving others in place of those refused"))
      return;
  }
}

} // namespace plate::match
