// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>

#include <vector>

namespace plate::reduced
{

/// Polynomials on the cube from -1 to 1, of the highest total degree whose number stays within a limit.
class PolynomialBasis
{
public:
  PolynomialBasis() = default;
  PolynomialBasis(Eigen::Index num_parameters, std::size_t most_terms);

  [[nodiscard]] std::size_t size() const { return powers_.size(); }

  /// Chebyshev products at a point, (size).
  [[nodiscard]] Eigen::VectorXd at(const Eigen::VectorXd& unit_coordinates) const;

private:
  std::vector<std::vector<int>> powers_;
};

} // namespace plate::reduced
