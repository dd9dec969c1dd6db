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

/// Frequencies of the targets from the traits of stacks: a quadratic form of them, fitted to solved stacks.
class QuickEstimate
{
public:
  /// @param traits       of solved stacks
  /// @param log_hz       logarithms of the frequencies, (stacks, targets); NaN where a target was not found
  void fit(const std::vector<const StackTraits*>& traits, const Eigen::MatrixXd& log_hz);

  /// Logarithms of the frequencies, (targets).
  [[nodiscard]] Eigen::VectorXd log_hz(const StackTraits& traits) const;

private:
  [[nodiscard]] Eigen::VectorXd monomials(const StackTraits& traits) const;

  Eigen::VectorXd centre_;
  Eigen::VectorXd spread_;
  Eigen::MatrixXd weights_; // (monomials, targets)
};

} // namespace plate::match
