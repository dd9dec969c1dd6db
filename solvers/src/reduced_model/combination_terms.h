// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>

#include <vector>

namespace plate::reduced
{

/// Samples of a field as combinations of a few of them, with coefficients from a few places of the field.
///
/// Columns of the samples are fields at different parameters, blocks of rows what the field is at different places.
/// @source empirical interpolation with more values than unknowns: [Barrault2004], [Negri2015]
class CombinationTerms
{
public:
  CombinationTerms() = default;

  /// @param samples    (places * block, samples)
  /// @param block      rows of one place
  /// @param tolerance  greatest norm of what a combination may miss of a sample at one place
  CombinationTerms(const Eigen::MatrixXd& samples, Eigen::Index block, double tolerance);

  [[nodiscard]] const std::vector<Eigen::Index>& terms() const { return terms_; }   ///< samples combined
  [[nodiscard]] const std::vector<Eigen::Index>& places() const { return places_; } ///< to be known of a new field

  /// Coefficients of a field known at places(), one block after the other.
  [[nodiscard]] Eigen::VectorXd coefficients(const Eigen::VectorXd& at_places) const;

  /// Greatest norm of what the combination misses at one of the places.
  [[nodiscard]] double misfit(const Eigen::VectorXd& at_places, const Eigen::VectorXd& coefficients) const;

private:
  void choose_terms(Eigen::MatrixXd rest, Eigen::Index block, double tolerance);
  void choose_places(const Eigen::MatrixXd& samples, Eigen::Index block, double tolerance);

  Eigen::Index block_ = 0;
  std::vector<Eigen::Index> terms_;
  std::vector<Eigen::Index> places_;
  Eigen::MatrixXd at_places_; // the terms there
  Eigen::MatrixXd inverse_;   // pseudo-inverse of that
};

} // namespace plate::reduced
