// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "../../reduced_model/torsion_form.h"

#include <plate/laminates/laminate.h>

#include <Eigen/Core>

#include <span>
#include <vector>

namespace plate::match
{

/// Torsion of bars under any laminate, from that under single plies of like thickness and shear moduli.
///
/// A cross-section takes a millisecond to solve, dozens for each laminate; the torsion of bars is a few percent of a
/// mode's energy, and what the order of the plies does to it is a few percent of that.
class BarStrip
{
public:
  /// @param start      a plate with bars
  /// @param laminates  that stand for all it will be asked about
  BarStrip(const Model& start, std::span<const Laminate> laminates);

  [[nodiscard]] std::size_t num_terms() const { return torsion_.num_terms(); }

  /// Stiffness of each term times vectors of unknowns.
  [[nodiscard]] std::vector<reduced::Vectors> terms(const std::vector<TriangleCover>& covers, const DofMap& dofs,
                                                    const reduced::Vectors& vectors) const;

  [[nodiscard]] Eigen::VectorXd coefficients(const Laminate& laminate) const;

  /// Coefficients of what the torsion of bars dissipates, by the losses of the laminate and their own.
  [[nodiscard]] Eigen::VectorXd dissipation(const Laminate& laminate) const;

private:
  Model reference_; // with a ply in the middle of the box
  ParameterBox box_;
  reduced::TorsionForm torsion_;
  double loss_; // of the torsion, by that of the bars
};

} // namespace plate::match
