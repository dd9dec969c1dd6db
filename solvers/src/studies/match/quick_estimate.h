// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "stack_space.h"

#include <Eigen/Core>

#include <vector>

namespace plate::match
{

/// What an estimate of modes takes of a stack.
struct StackTraits
{
  Eigen::VectorXd values; ///< logarithms of stiffnesses, thickness and mass per area; shares of couplings
  double areal_mass;      ///< [kg/m2]
  double cross_ratio;     ///< D11 / D22 [-]
  double twist_ratio;     ///< (D12 + 2 D66) / sqrt(D11 D22) [-]
};

[[nodiscard]] StackTraits stack_traits(const StackSpace& space, const Stack& stack);

/// Frequencies of the targets, and likeness if wanted, from the traits of stacks: a quadratic form of them, fitted to
/// solved stacks.
class QuickEstimate
{
public:
  /// @param traits       of solved stacks
  /// @param values       as of ModeTargets::values(), one row each; NaN where a target was not found
  void fit(const std::vector<const StackTraits*>& traits, const Eigen::MatrixXd& values);

  /// An estimate of ModeTargets::values().
  [[nodiscard]] Eigen::VectorXd values(const StackTraits& traits) const;

private:
  [[nodiscard]] Eigen::VectorXd monomials(const StackTraits& traits) const;

  Eigen::VectorXd centre_;
  Eigen::VectorXd spread_;
  Eigen::MatrixXd weights_; // (monomials, values)
};

} // namespace plate::match
