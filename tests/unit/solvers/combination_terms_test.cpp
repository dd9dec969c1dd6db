// SPDX-License-Identifier: MPL-2.0
#include "combination_terms.h"
#include "polynomial_fit.h"

#include <doctest/doctest.h>

#include <cmath>

using namespace plate::reduced;

namespace
{

constexpr Eigen::Index num_places = 5;
constexpr Eigen::Index block = 4;

/// A field that is a polynomial of degree two in t with fixed coefficients of its own at each row.
Eigen::VectorXd quadratic_field(double t)
{
  Eigen::VectorXd field(num_places * block);
  for (Eigen::Index row = 0; row < field.size(); ++row)
  {
    const auto r = static_cast<double>(row);
    field(row) = std::cos(r) + t * std::sin(2.0 * r) + t * t * std::cos(3.0 * r + 1.0);
  }
  return field;
}

Eigen::MatrixXd quadratic_samples()
{
  Eigen::MatrixXd samples(num_places * block, 7);
  for (Eigen::Index i = 0; i < samples.cols(); ++i)
    samples.col(i) = quadratic_field(-1.0 + static_cast<double>(i) / 3.0);
  return samples;
}

Eigen::VectorXd at_places(const CombinationTerms& terms, const Eigen::VectorXd& field)
{
  Eigen::VectorXd values(static_cast<Eigen::Index>(terms.places().size()) * block);
  for (std::size_t i = 0; i < terms.places().size(); ++i)
    values.segment(static_cast<Eigen::Index>(i) * block, block) = field.segment(terms.places()[i] * block, block);
  return values;
}

} // namespace

TEST_CASE("three samples of a quadratic give all others exactly, from one place")
{
  const CombinationTerms terms(quadratic_samples(), block, 1e-10);
  REQUIRE(terms.terms().size() == 3);
  REQUIRE(terms.places().size() == 1);
  const Eigen::VectorXd field = quadratic_field(0.4321);
  const Eigen::VectorXd known = at_places(terms, field);
  const Eigen::VectorXd coefficients = terms.coefficients(known);
  Eigen::VectorXd combined = Eigen::VectorXd::Zero(field.size());
  for (std::size_t i = 0; i < terms.terms().size(); ++i)
    combined += coefficients(static_cast<Eigen::Index>(i)) * quadratic_samples().col(terms.terms()[i]);
  CHECK((combined - field).norm() < 1e-12);
  CHECK(coefficients.sum() == doctest::Approx(1.0).epsilon(1e-10)); // Lagrange polynomials
  CHECK(terms.misfit(known, coefficients) < 1e-12);
}

TEST_CASE("a field that is no combination shows as a misfit")
{
  const CombinationTerms terms(quadratic_samples(), block, 1e-10);
  Eigen::VectorXd known = at_places(terms, quadratic_field(0.2));
  known(1) += 1e-3;
  CHECK(terms.misfit(known, terms.coefficients(known)) > 1e-5);
}

TEST_CASE("a generous tolerance takes one term")
{
  CHECK(CombinationTerms(quadratic_samples(), block, 100.0).terms().size() == 1);
}

TEST_CASE("polynomials up to the degree their number allows")
{
  CHECK(PolynomialBasis(1, 36).size() == 7);  // degree 6, the highest
  CHECK(PolynomialBasis(3, 36).size() == 35); // degree 4: (4 + 3)! / (4! 3!)
  CHECK(PolynomialBasis(12, 36).size() == 13); // degree 1 whatever the limit
  // T2(u) = 2 u^2 - 1 and products, in the order of degrees.
  const Eigen::VectorXd values = PolynomialBasis(2, 6).at(Eigen::Vector2d(0.5, -0.25));
  Eigen::VectorXd expected(6);
  expected << 1.0, 0.5, -0.25, 2 * 0.25 - 1, 0.5 * -0.25, 2 * 0.0625 - 1;
  CHECK((values - expected).norm() < 1e-15);
}
