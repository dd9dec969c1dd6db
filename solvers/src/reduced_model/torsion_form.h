// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "element_forms.h"
#include "parameter_samples.h"
#include "polynomial_fit.h"

#include <plate/assembly/parametric_model.h>

#include <vector>

namespace plate::reduced
{

/// Torsion of the bars over the parameters: a few tables over the length, with polynomials as coefficients.
///
/// The stiffness is linear in the table of what a bar adds to the torsional stiffness, but each entry takes a solve of
/// the cross-section, a millisecond: so it is computed at points spread over the box and fitted between them. Torsion
/// is a few percent of a mode's energy, so that a part in a thousand of it is enough.
class TorsionForm
{
public:
  /// No bars, no terms.
  TorsionForm() = default;

  /// @param reference  model in the middle of the box
  /// @param scratch    a model of the design, left at some point
  TorsionForm(ParametricModel& design, const ParameterBox& box, const Model& reference, Model& scratch);

  [[nodiscard]] std::size_t num_terms() const { return terms_.size(); }

  /// Stiffness of one term times vectors.
  ///
  /// @param covers  of the reference, without torsion
  [[nodiscard]] Vectors apply_term(std::size_t term, const Model& reference, const std::vector<TriangleCover>& covers,
                                   const DofMap& dofs, const Vectors& vectors) const;

  /// Coefficients of the terms at a point.
  [[nodiscard]] Eigen::VectorXd coefficients(const Eigen::VectorXd& unit_coordinates) const;

  /// Greatest relative error met at points the polynomials were not fitted to [-].
  [[nodiscard]] double error() const { return error_; }

private:
  std::vector<std::vector<BarTorsion>> terms_; // one table per bar
  PolynomialBasis polynomials_;
  Eigen::MatrixXd weights_; // (terms, polynomials)
  double error_ = 0.0;
};

} // namespace plate::reduced
