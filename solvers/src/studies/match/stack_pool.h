// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "quick_estimate.h"
#include "stack_space.h"

#include <cstddef>
#include <limits>
#include <optional>
#include <tuple>
#include <unordered_map>
#include <utility>
#include <vector>

namespace plate::match
{

/// A stack within the limits of mass and what is known of it.
struct PoolStack
{
  Stack stack;
  StackTraits traits;
  double mass;                                            ///< of the plate [kg]
  double score = std::numeric_limits<double>::infinity(); ///< estimated, or solved [cents]
  Eigen::VectorXd values = {}; ///< ModeTargets::values() on the reduced model; empty: not solved
};

/// Mass of a plate from the mass per area of its laminate.
struct PlateMass
{
  double fixed; ///< of bars, patches and what is stuck on [kg]
  double area;  ///< [m2]
};

/// Limits of the plate's mass [kg].
struct MassLimits
{
  double least = 0.0;
  double most = std::numeric_limits<double>::infinity();
};

/// The stacks considered.
class StackPool
{
public:
  StackPool(const StackSpace& space, const PlateMass& plate, const MassLimits& limits);

  /// Considers a stack: keeps it if it is new and its mass, known without any solve, is within the limits.
  ///
  /// @return its number; none if its mass is not within the limits or it is not allowed
  std::optional<std::size_t> offer(const Stack& stack);

  /// Every stack there is, or as many drawn at random.
  void fill(std::size_t count, std::uint64_t seed);

  /// Takes limits anew that the stack nearest to the old ones keeps to, and all within them.
  void widen();

  /// Numbers of the best by score, half of them overall, half of them the same count at each level of mass.
  ///
  /// @param solved  of those solved, or of those not solved
  [[nodiscard]] std::vector<std::size_t> best(std::size_t count, bool solved) const;

  /// Solved stacks that no other beats in both mass and score, ascending in mass.
  [[nodiscard]] std::vector<std::size_t> front() const;

  [[nodiscard]] std::size_t num_considered() const { return seen_.size(); }
  [[nodiscard]] const MatchReach& reach() const { return reach_; }

  std::vector<PoolStack> stacks;

private:
  const StackSpace& space_;
  PlateMass plate_;
  MassLimits limits_;
  std::unordered_map<Stack, std::optional<std::size_t>, StackHash> seen_; // with their numbers
  MatchReach reach_;
};

} // namespace plate::match
