// SPDX-License-Identifier: MPL-2.0
#include "packed_terms.h"

namespace plate::match
{

PackedTerms::PackedTerms(const std::vector<Eigen::MatrixXd>& terms)
    : size_(terms.front().rows()), packed_(size_ * (size_ + 1) / 2, static_cast<Eigen::Index>(terms.size()))
{
  for (std::size_t term = 0; term < terms.size(); ++term)
    for (Eigen::Index j = 0, at = 0; j < size_; at += size_ - j, ++j)
      packed_.col(static_cast<Eigen::Index>(term)).segment(at, size_ - j) = terms[term].col(j).tail(size_ - j);
}

Eigen::MatrixXd PackedTerms::combined(const Eigen::VectorXd& factors) const
{
  const Eigen::VectorXd columns = packed_ * factors;
  Eigen::MatrixXd out(size_, size_);
  for (Eigen::Index j = 0, at = 0; j < size_; at += size_ - j, ++j)
    out.col(j).tail(size_ - j) = columns.segment(at, size_ - j);
  return out;
}

} // namespace plate::match
