// SPDX-License-Identifier: MPL-2.0
#include "polynomial_fit.h"

namespace plate::reduced
{

namespace
{

constexpr int highest_degree = 6; // of one parameter: torsion is smooth, more would follow its rounding

/// Adds all ways to share `degree` among the parameters from `first` on.
void add_powers(std::vector<int>& powers, std::size_t first, int degree, std::vector<std::vector<int>>& all)
{
  if (first + 1 == powers.size())
  {
    powers[first] = degree;
    all.push_back(powers);
    return;
  }
  for (int share = degree; share >= 0; --share)
  {
    powers[first] = share;
    add_powers(powers, first + 1, degree - share, all);
  }
}

} // namespace

PolynomialBasis::PolynomialBasis(Eigen::Index num_parameters, std::size_t most_terms)
{
  std::vector<int> powers(static_cast<std::size_t>(num_parameters), 0);
  for (int degree = 0; degree <= highest_degree; ++degree)
  {
    std::vector<std::vector<int>> longer = powers_;
    add_powers(powers, 0, degree, longer);
    if (degree > 1 && longer.size() > most_terms)
      return;
    powers_ = std::move(longer);
  }
}

Eigen::VectorXd PolynomialBasis::at(const Eigen::VectorXd& u) const
{
  Eigen::MatrixXd chebyshev(u.size(), highest_degree + 1);
  chebyshev.col(0).setOnes();
  chebyshev.col(1) = u;
  for (int k = 2; k <= highest_degree; ++k)
    chebyshev.col(k) = 2.0 * u.cwiseProduct(chebyshev.col(k - 1)) - chebyshev.col(k - 2);
  Eigen::VectorXd values = Eigen::VectorXd::Ones(static_cast<Eigen::Index>(powers_.size()));
  for (std::size_t term = 0; term < powers_.size(); ++term)
    for (std::size_t k = 0; k < powers_[term].size(); ++k)
      values(static_cast<Eigen::Index>(term)) *= chebyshev(static_cast<Eigen::Index>(k), powers_[term][k]);
  return values;
}

} // namespace plate::reduced
