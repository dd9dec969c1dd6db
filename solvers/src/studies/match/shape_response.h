// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "mode_targets.h"

#include <plate/solvers/studies/match.h>

#include <Eigen/Core>

#include <vector>

namespace plate::match
{

/// What the free parameters of the shape do to the targets, taken from one laminate for all.
///
/// Logarithms of the frequencies as parabolas of each parameter, through full solves at both ends of its range and at
/// the start; the effects of several parameters add up. It steers the search; what is shown is solved in full.
class ShapeResponse
{
public:
  /// @param shape  with at least one parameter
  ShapeResponse(const MatchShape& shape, const ModeTargets& targets);

  /// Solves the plate with a laminate over its shapes.
  ///
  /// @param at_start  frequencies of the targets at the start, NaN where not found [Hz]
  void measure(const Laminate& laminate, const Eigen::VectorXd& at_start);

  /// Moves the parabolas so that they are right where a laminate was solved: near there they are good to second order.
  ///
  /// @param at_start  frequencies of the targets at the start [Hz]
  /// @param there     those at the point [Hz]
  void correct(const std::vector<double>& point, const Eigen::VectorXd& at_start, const Eigen::VectorXd& there);

  /// The plate of a shape with a laminate.
  [[nodiscard]] Model model(const Laminate& laminate, const std::vector<double>& point) const;

  /// Change of the logarithms at a point, (targets).
  [[nodiscard]] Eigen::VectorXd shift(const std::vector<double>& point) const;

  /// Changes at points spread over the shapes, one column each, (targets, points).
  [[nodiscard]] Eigen::MatrixXd shifts() const;

  /// The shape that suits a laminate best.
  /// @param at_start  its frequencies of the targets at the start [Hz]
  [[nodiscard]] std::vector<double> best(const Eigen::VectorXd& at_start) const;

  [[nodiscard]] std::size_t num_solved() const { return num_solved_; }

private:
  [[nodiscard]] Eigen::VectorXd log_hz(const Laminate& laminate, const std::vector<double>& point);

  const MatchShape& shape_;
  const ModeTargets& targets_;
  std::vector<Eigen::VectorXd> slope_; // per parameter, (targets) [per unit]
  std::vector<Eigen::VectorXd> bend_;  // [per unit squared]
  Eigen::VectorXd correction_;         // of the last point solved, (targets)
  std::size_t num_solved_ = 0;
};

} // namespace plate::match
