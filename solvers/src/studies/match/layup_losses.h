// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "packed_terms.h"
#include "section_numbers.h"

#include "../../reduced_model/element_forms.h"

#include <plate/assembly/dof_map.h>
#include <plate/laminates/section.h>

#include <Eigen/Core>

#include <span>
#include <vector>

namespace plate::match
{

/// What a reduced model needs to tell the losses of its modes.
///
/// The energy that a plate dissipates is its stiffness derived by a common factor on the loss of every modulus: of
/// plate and patches a change of the numbers of the section, of bars a matrix of its own.
/// @source modal strain energy method, [Ungar1962] eq. 6; as mode_losses()
class LayupLosses
{
public:
  /// @param start  the plate, which must outlive this object as the covers must
  LayupLosses(const Model& start, std::span<const TriangleCover> covers);

  /// Laminates that numbers() needs to be combined of, besides those it is asked about.
  [[nodiscard]] static std::vector<Laminate> further_samples(std::span<const Laminate> laminates);

  /// Change of the stiffness' numbers by the losses of plies and patches.
  [[nodiscard]] Eigen::VectorXd numbers(const Laminate& laminate) const;

  /// Takes vectors into the terms of bars.
  ///
  /// @param laminates  of the terms of the stiffness
  /// @param added      the last vectors of the basis
  void extend(std::span<const Laminate> laminates, const DofMap& dofs, const reduced::Vectors& basis,
              const reduced::Vectors& added);

  /// Dissipation of bars but for their torsion, lower triangle; only with bars.
  /// @param factors  of the terms of the stiffness
  [[nodiscard]] Eigen::MatrixXd of_bars(const Eigen::VectorXd& factors) const;

private:
  std::span<const TriangleCover> covers_;
  Model more_; // with every modulus of patches and bars raised by its loss
  Model less_; // lowered
  SectionReader more_reader_;
  SectionReader less_reader_;
  std::vector<std::size_t> under_bars_; // triangles
  std::vector<Eigen::MatrixXd> terms_;  // of bars, one for each term of the stiffness
  PackedTerms packed_;
};

} // namespace plate::match
