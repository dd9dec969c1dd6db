// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "mode_targets.h"
#include "patch_trials.h"
#include "shape_response.h"
#include "stack_pool.h"

#include <limits>
#include <optional>
#include <unordered_set>

namespace plate::match
{

/// A laminate with what the reduced model says of it.
struct FoundLaminate
{
  Laminate laminate;
  double mass;  ///< [kg]
  double score; ///< [cents]
};

[[nodiscard]] MassLimits mass_limits(const MatchGoal& goal);

/// A laminate with one ply turned, and its mirror image in a symmetric one.
/// @param turn  [rad]
[[nodiscard]] Laminate with_turned(Laminate laminate, std::size_t ply, double turn, bool symmetric);

/// By how much estimated scores are too high at most, three in a thousand apart.
struct Doubt
{
  double cents = std::numeric_limits<double>::infinity();
  double part = 1.0; ///< of the estimate [-]
};

/// One search from supplies to candidates.
class LayupSearch
{
public:
  LayupSearch(const Model& start, const StackSupplies& supplies, const MatchGoal& goal, const MatchOptions& options,
              const MatchShape& shape);

  [[nodiscard]] MatchResult run();

private:
  [[nodiscard]] bool goes_on(const std::string& stage);
  [[nodiscard]] std::vector<std::size_t> spread_out(std::size_t count) const;
  void prepare_model();
  [[nodiscard]] std::vector<std::size_t> promising(std::size_t count) const;
  void solve(const std::vector<std::size_t>& numbers);
  bool solve_promising(std::size_t count);
  void estimate();
  void grow();
  void look_around_front();
  void learn(const std::vector<std::size_t>& numbers);
  void learn_best();
  void learn_front();
  void search();
  [[nodiscard]] double score(const Laminate& laminate) const;
  [[nodiscard]] std::vector<FoundLaminate> found();
  [[nodiscard]] std::vector<FoundLaminate> refined(const std::vector<FoundLaminate>& laminates) const;
  [[nodiscard]] std::vector<std::vector<Laminate>> shown();
  void learn_shape();
  [[nodiscard]] MatchCandidate candidate(const Laminate& laminate, const Model& plate, const FullModes& full) const;
  [[nodiscard]] MatchCandidate solved_candidate(Laminate laminate);
  [[nodiscard]] Laminate refined_in_shape(const Laminate& laminate) const;
  [[nodiscard]] MatchCandidate with_best_patches(MatchCandidate best);
  [[nodiscard]] Eigen::MatrixXd modes_of_others(const Model& plate);
  [[nodiscard]] bool better_patches(const Model& plate, const PatchTrials& trials, MatchCandidate& best);
  void add_first_accepted(const std::vector<Laminate>& alternatives);
  [[nodiscard]] MatchSensitivity sensitivity(const Laminate& laminate) const;

  const Model& start_;
  const MatchGoal& goal_;
  const MatchOptions& options_;
  const StackSupplies& supplies_;
  StackSpace space_;
  ModeTargets targets_;
  std::optional<StackPool> pool_;
  std::optional<LayupModes> modes_;
  std::optional<ShapeResponse> shape_;
  QuickEstimate quick_;
  Doubt doubt_;
  std::unordered_set<Stack, StackHash> learned_;
  MatchResult result_;
};

} // namespace plate::match
