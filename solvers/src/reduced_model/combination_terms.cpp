// SPDX-License-Identifier: MPL-2.0
#include "combination_terms.h"

#include <Eigen/QR>

#include <algorithm>
#include <limits>

namespace plate::reduced
{

namespace
{

/// Norm of each block of each column, (places, samples).
Eigen::MatrixXd block_norms(const Eigen::MatrixXd& fields, Eigen::Index block)
{
  Eigen::MatrixXd norms(fields.rows() / block, fields.cols());
  for (Eigen::Index place = 0; place < norms.rows(); ++place)
    norms.row(place) = fields.middleRows(place * block, block).colwise().norm();
  return norms;
}

Eigen::MatrixXd rows_of(const Eigen::MatrixXd& fields, Eigen::Index block, const std::vector<Eigen::Index>& places)
{
  Eigen::MatrixXd rows(block * static_cast<Eigen::Index>(places.size()), fields.cols());
  for (std::size_t i = 0; i < places.size(); ++i)
    rows.middleRows(static_cast<Eigen::Index>(i) * block, block) = fields.middleRows(places[i] * block, block);
  return rows;
}

/// Each block turned so that its rows beyond the number of samples vanish: norms and products stay as they are.
Eigen::MatrixXd with_short_blocks(const Eigen::MatrixXd& fields, Eigen::Index block, Eigen::Index short_block)
{
  const Eigen::Index num_places = fields.rows() / block;
  Eigen::MatrixXd out = Eigen::MatrixXd::Zero(num_places * short_block, fields.cols());
  for (Eigen::Index place = 0; place < num_places; ++place)
  {
    const Eigen::HouseholderQR<Eigen::MatrixXd> qr(fields.middleRows(place * block, block));
    out.middleRows(place * short_block, short_block) =
        qr.matrixQR().topRows(short_block).template triangularView<Eigen::Upper>();
  }
  return out;
}

Eigen::MatrixXd pseudo_inverse(const Eigen::MatrixXd& matrix)
{
  Eigen::CompleteOrthogonalDecomposition<Eigen::MatrixXd> decomposition(matrix.rows(), matrix.cols());
  decomposition.setThreshold(1e-11); // a place that does not see a term says nothing about it
  decomposition.compute(matrix);
  return decomposition.pseudoInverse();
}

} // namespace

CombinationTerms::CombinationTerms(const Eigen::MatrixXd& samples, Eigen::Index block, double tolerance) : block_(block)
{
  const Eigen::Index short_block = std::min(block, samples.cols());
  const Eigen::MatrixXd shortened = with_short_blocks(samples, block, short_block);
  choose_terms(shortened, short_block, tolerance);
  choose_places(shortened, short_block, tolerance);
  at_places_ = rows_of(samples(Eigen::all, terms_), block, places_);
  inverse_ = pseudo_inverse(at_places_);
}

void CombinationTerms::choose_terms(Eigen::MatrixXd rest, Eigen::Index block, double tolerance)
{
  while (static_cast<Eigen::Index>(terms_.size()) < rest.cols())
  {
    Eigen::Index place = 0;
    Eigen::Index worst = 0;
    if (block_norms(rest, block).maxCoeff(&place, &worst) <= tolerance && !terms_.empty())
      return;
    terms_.push_back(worst);
    const Eigen::VectorXd direction = rest.col(worst).normalized();
    for (int pass = 0; pass < 2; ++pass) // the second pass repairs the rounding of the first
      rest -= direction * (direction.transpose() * rest).eval();
  }
}

void CombinationTerms::choose_places(const Eigen::MatrixXd& samples, Eigen::Index block, double tolerance)
{
  const Eigen::MatrixXd chosen = samples(Eigen::all, terms_);
  const Eigen::Index num_places = samples.rows() / block;
  double reached = std::numeric_limits<double>::infinity();
  constexpr double enough = 2.0; // times the tolerance: the places only have to find what the terms can show
  while (reached > enough * tolerance && static_cast<Eigen::Index>(places_.size()) < num_places)
  {
    Eigen::Index best = -1;
    double least = std::numeric_limits<double>::infinity();
    for (Eigen::Index candidate = 0; candidate < num_places; ++candidate)
    {
      std::vector<Eigen::Index> places = places_;
      places.push_back(candidate);
      const Eigen::MatrixXd coefficients =
          pseudo_inverse(rows_of(chosen, block, places)) * rows_of(samples, block, places);
      const double missed = block_norms(samples - chosen * coefficients, block).maxCoeff();
      if (missed < least)
      {
        least = missed;
        best = candidate;
      }
    }
    if (best < 0 || !(least < reached))
      break;
    reached = least;
    places_.push_back(best);
  }
}

Eigen::VectorXd CombinationTerms::coefficients(const Eigen::VectorXd& at_places) const
{
  return inverse_ * at_places;
}

double CombinationTerms::misfit(const Eigen::VectorXd& at_places, const Eigen::VectorXd& coefficients) const
{
  return block_norms(at_places - at_places_ * coefficients, block_).maxCoeff();
}

} // namespace plate::reduced
