// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "combination_terms.h"
#include "element_forms.h"
#include "parameter_samples.h"

#include <plate/assembly/parametric_model.h>

namespace plate::reduced
{

/// Coefficients of the terms, and what the combination misses of a matrix relative to that in the middle of the box.
struct Combination
{
  Eigen::VectorXd coefficients;
  double misfit = 0.0; ///< bound of the relative change of an energy, from the elements looked at [-]
};

/// Stiffness (without torsion of bars) or mass (without point masses) as combination of those at chosen points.
///
/// In the stiffness of laid plies the section enters linearly: 5 x 6 moments of the in-plane stiffness and 3 numbers of
/// the transverse shear stiffness, the inverse of the equilibrium compliance, as itself. There the combination is exact
/// to rounding with at most 33 terms, whatever the curvature of the plate; a bar adds powers of the distance of its
/// face. For carved wood the section depends on slope and moduli together, for a graduated plate on thickness and
/// place: there terms are added until the tolerance is met. Whatever it is, a few elements tell the coefficients, since
/// all elements share them; each is measured in the energy of the element in the middle of the box, so that what the
/// combination misses bounds the relative error of eigenvalues.
class AffineForm
{
public:
  /// @param reference  the model in the middle of the box
  /// @param covers     of its triangles, without torsion
  AffineForm(Form form, const Model& reference, const std::vector<TriangleCover>& covers);

  /// Takes a model as one of those to choose from.
  void add_sample(const Model& model);

  /// Chooses the terms among the samples, and the elements that tell the coefficients.
  ///
  /// @param tolerance  greatest misfit of a sample [-]
  void choose(double tolerance);

  /// Numbers of the samples that are combined, in the order of the coefficients.
  [[nodiscard]] const std::vector<Eigen::Index>& terms() const { return combination_.terms(); }

  [[nodiscard]] Combination combine(const Model& model) const;

private:
  struct Place
  {
    std::size_t triangle;
    TriangleCover cover;
    Eigen::MatrixXd unit_energy; // columns on which the element matrix in the middle of the box is the identity
  };
  [[nodiscard]] Eigen::VectorXd energies(const Model& model) const;

  Form form_;
  std::vector<Place> places_; // all looked at while choosing, then those that tell the coefficients
  std::vector<Eigen::VectorXd> samples_;
  CombinationTerms combination_;
};

} // namespace plate::reduced
