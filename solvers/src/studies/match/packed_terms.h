// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>

#include <vector>

namespace plate::match
{

/// Symmetric matrices on a basis, kept so that a combination of them is one product.
class PackedTerms
{
public:
  PackedTerms() = default;

  /// @param terms  at least one; lower triangles, (size, size)
  explicit PackedTerms(const std::vector<Eigen::MatrixXd>& terms);

  /// Sum of the terms, each with its factor: lower triangle, (size, size).
  [[nodiscard]] Eigen::MatrixXd combined(const Eigen::VectorXd& factors) const;

private:
  Eigen::Index size_ = 0;
  Eigen::MatrixXd packed_; // lower triangles whose columns follow one another, (size (size + 1) / 2, terms)
};

} // namespace plate::match
