// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/form_changes.h>
#include <plate/solvers/studies/sensitivity.h>

#include <Eigen/Core>

#include <span>
#include <vector>

namespace plate::sensitivity
{

/// Turns changes of K and M, as pairs of modes see them, into changes of frequencies.
class EigenvalueSlopes
{
public:
  /// @param frequencies_hz  ascending, (n) [Hz]
  explicit EigenvalueSlopes(const Eigen::VectorXd& frequencies_hz);

  /// The pairs needed: each mode with itself, then those of different modes that are repeated.
  [[nodiscard]] std::span<const VectorPair> pairs() const { return pairs_; }

  /// Slopes of all modes, ascending among repeated ones, (n) [Hz per unit].
  ///
  /// @param stiffness,mass  phi_i^T dK phi_j, phi_i^T dM phi_j of the pairs, per unit
  [[nodiscard]] Eigen::VectorXd branches(const Eigen::VectorXd& stiffness, const Eigen::VectorXd& mass) const;

  /// As branches(), with the mean of the slopes for each of some repeated modes: linear in the arguments.
  [[nodiscard]] Eigen::VectorXd means(const Eigen::VectorXd& stiffness, const Eigen::VectorXd& mass) const;

  /// Modes among the first `num_modes` that are repeated or near one another.
  [[nodiscard]] std::vector<CloseModes> close_modes(int num_modes) const;

private:
  Eigen::VectorXd frequencies_hz_;
  std::vector<CloseModes> repeated_;
  std::vector<VectorPair> pairs_;
};

} // namespace plate::sensitivity
