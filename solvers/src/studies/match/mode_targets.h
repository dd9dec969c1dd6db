// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "layup_modes.h"

#include <plate/solvers/studies/match.h>

#include <Eigen/Core>

#include <utility>
#include <vector>

namespace plate::match
{

/// Frequency of each target's partner among the modes of a laminate, and how alike they are.
struct FoundModes
{
  std::vector<int> mode;          ///< -1 where none is alike, (targets)
  std::vector<double> assurance;  ///< (targets) [-]
  Eigen::VectorXd frequencies_hz; ///< NaN where none is alike, (targets) [Hz]
  Eigen::VectorXd loss;           ///< NaN where none is alike or it was not asked for, (targets) [-]
};

/// The targets of a plate solved in full.
struct SolvedTargets
{
  FoundModes found;
  double mass; ///< of the plate [kg]
};

/// Finds the targets among modes by their shape.
class ModeTargets
{
public:
  /// @throws InvalidInput if there are no targets, or one has no guide, no positive frequency or not the loss needed
  explicit ModeTargets(const MatchGoal& goal);

  /// Modes to compute, so that each target finds its own although others have come in between.
  [[nodiscard]] int num_modes() const;

  /// Makes ready for modes in the vectors of a basis.
  void prepare(const LayupModes& modes, const Model& model);

  /// @param modes  in the vectors of the basis prepared for
  [[nodiscard]] FoundModes find(const QuickModes& modes) const;

  /// @param basis  products() of the vectors that the modes are combined of
  [[nodiscard]] FoundModes find(const ShapeProducts& basis, const QuickModes& modes) const;

  /// Of the guide with vectors of unknowns of a model.
  [[nodiscard]] ShapeProducts products(const Model& model, const DofMap& dofs, const Eigen::MatrixXd& vectors) const;

  /// @param model  the laminate's own
  [[nodiscard]] FoundModes find(const Model& model, const DofMap& dofs, const ModalResult& modal, Losses losses) const;

  /// Solves a plate on a mesh of its own and finds the targets.
  /// @throws NumericalFailure if the modes do not converge
  [[nodiscard]] SolvedTargets solve(const Model& model, Losses losses) const;

  /// Cents above the targets; NaN where there is no mode.
  [[nodiscard]] Eigen::VectorXd cents(const Eigen::VectorXd& frequencies_hz) const;

  /// Changes of the logarithms that the shape of the plate may bring besides, one column each; the best one counts.
  void allow_shifts(Eigen::MatrixXd shifts) { shifts_ = std::move(shifts); }

  /// Writes mismatch, modes and lost targets into a candidate.
  ///
  /// @param reduced_hz  what the reduced model says of the targets, NaN where it does not [Hz]
  void describe(const FoundModes& found, const Eigen::VectorXd& reduced_hz, MatchCandidate& candidate) const;

  /// Whether the score depends on losses.
  [[nodiscard]] Losses losses() const { return goal_.loss ? Losses::computed : Losses::left_out; }

  /// What a score is made of: logarithms of the frequencies; where likeness is wanted, the assurances below; where
  /// losses are, the logarithms of their ratios to those of the targets. NaN where no mode was found.
  [[nodiscard]] Eigen::VectorXd values(const FoundModes& found) const;

  /// MatchCandidate::score of values() with the best of the shifts.
  [[nodiscard]] double score(const Eigen::VectorXd& values) const;

  /// The same with one shift of the logarithms.
  [[nodiscard]] double shifted_score(const Eigen::VectorXd& values, const Eigen::VectorXd& shift) const;

  /// Root of the mean square without any shift; lost targets count as lost_cents.
  [[nodiscard]] double mismatch_as_is(const Eigen::VectorXd& frequencies_hz) const;

private:
  /// @param losses  of all modes; empty: not asked for
  [[nodiscard]] FoundModes find(const ShapeProducts& products, const Eigen::VectorXd& frequencies_hz,
                                const Eigen::VectorXd& losses) const;

  [[nodiscard]] double unlikeness(const Eigen::VectorXd& values) const;
  [[nodiscard]] double loss_miss(const Eigen::VectorXd& values) const;

  const MatchGoal& goal_;
  Eigen::MatrixXd shifts_; // none: the shape is fixed
  ShapeProducts basis_;    // of the guide with the vectors of the basis
};

} // namespace plate::match
