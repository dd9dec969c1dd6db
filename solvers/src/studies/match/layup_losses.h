// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "../../reduced_model/element_forms.h"
#include "packed_terms.h"
#include "section_numbers.h"

#include <plate/assembly/dof_map.h>
#include <plate/laminates/laminate.h>

#include <Eigen/Core>

#include <span>
#include <vector>

namespace plate::match
{

/// What a reduced model needs to tell the losses of its modes.
///
/// The energy that a plate dissipates is its stiffness derived by a common factor on the loss of every modulus: by
/// those of the laminate a change of the numbers of the section, by those of patches and bars matrices of their own.
/// @source modal strain energy method, [Ungar1962] eq. 6; as mode_losses()
class LayupLosses
{
public:
  /// @param start   the plate
  /// @param covers  of its triangles; they must outlive this object
  LayupLosses(const Model& start, std::span<const TriangleCover> covers);

  /// Laminates that numbers() needs to be combined of, besides those it is asked about.
  [[nodiscard]] static std::vector<Laminate> further_samples(std::span<const Laminate> laminates);

  /// Change of the numbers of the stiffness by the losses of plies.
  [[nodiscard]] static Eigen::VectorXd numbers(const SectionReader& reader, const Laminate& laminate);

  /// Takes vectors into the terms of patches and bars.
  ///
  /// @param laminates  of the terms of the stiffness
  /// @param added      the last vectors of the basis
  void extend(std::span<const Laminate> laminates, const DofMap& dofs, const reduced::Vectors& basis,
              const reduced::Vectors& added);

  /// Whether there are patches or bars.
  [[nodiscard]] bool has_parts() const { return !triangles_.empty(); }

  /// Dissipation of patches and bars but for the torsion of these, lower triangle; only if there are any.
  /// @param factors  of the terms of the stiffness
  [[nodiscard]] Eigen::MatrixXd of_parts(const Eigen::VectorXd& factors) const { return packed_.combined(factors); }

private:
  std::span<const TriangleCover> covers_;
  Model more_;                         // with every modulus of patches and bars raised by its loss
  Model less_;                         // lowered
  std::vector<std::size_t> triangles_; // with patches or bars
  std::vector<Eigen::MatrixXd> terms_; // one for each term of the stiffness
  PackedTerms packed_;
};

} // namespace plate::match
