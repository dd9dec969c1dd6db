// SPDX-License-Identifier: MPL-2.0
#include <plate/materials/material.h>

#include <plate/core/error.h>

#include <doctest/doctest.h>

#include <Eigen/LU>

#include <limits>
#include <string>
#include <utility>

using namespace plate;

namespace
{

/// Sitka spruce, E_L 10.89 GPa and the ratios of [WoodHandbook2021] tables 5-1 and 5-2.
OrthotropicElastic sitka()
{
  const double EL = 10.89e9;
  return {.E1 = EL,
          .E2 = 0.078 * EL,
          .E3 = 0.043 * EL,
          .G12 = 0.064 * EL,
          .G13 = 0.061 * EL,
          .G23 = 0.003 * EL,
          .nu12 = 0.372,
          .nu13 = 0.467,
          .nu23 = 0.435};
}

OrthotropicElastic isotropic(double E, double nu)
{
  const double G = E / (2.0 * (1.0 + nu));
  return {.E1 = E, .E2 = E, .E3 = E, .G12 = G, .G13 = G, .G23 = G, .nu12 = nu, .nu13 = nu, .nu23 = nu};
}

std::string complaint(const OrthotropicElastic& elastic)
{
  try
  {
    check_elastic(elastic);
  }
  catch (const InvalidInput& error)
  {
    return error.what();
  }
  return "";
}

bool mentions(const std::string& text, const std::string& part)
{
  return text.find(part) != std::string::npos;
}

} // namespace

TEST_CASE("compliance gives the contractions that define the Poisson ratios")
{
  const OrthotropicElastic m = sitka();
  const Eigen::Matrix<double, 6, 6> S = compliance(m);
  CHECK(S.isApprox(S.transpose(), 1e-15));
  // Definition: nu_ij = -strain j / strain i under stress along i.
  CHECK(-S(1, 0) / S(0, 0) == doctest::Approx(0.372));
  CHECK(-S(2, 0) / S(0, 0) == doctest::Approx(0.467));
  CHECK(-S(2, 1) / S(1, 1) == doctest::Approx(0.435));
  CHECK(1.0 / S(1, 1) == doctest::Approx(0.078 * 10.89e9));
  CHECK(1.0 / S(2, 2) == doctest::Approx(0.043 * 10.89e9));
  // Order (11, 22, 33, 23, 13, 12): wood's rolling shear comes first of the three.
  CHECK(1.0 / S(3, 3) == doctest::Approx(0.003 * 10.89e9));
  CHECK(1.0 / S(4, 4) == doctest::Approx(0.061 * 10.89e9));
  CHECK(1.0 / S(5, 5) == doctest::Approx(0.064 * 10.89e9));
}

TEST_CASE("compliance of an isotropic solid is the inverse of the stiffness with Lame's constants")
{
  const double E = 70e9;
  const double nu = 0.3;
  const double mu = E / (2.0 * (1.0 + nu));
  const double lambda = E * nu / ((1.0 + nu) * (1.0 - 2.0 * nu));
  Eigen::Matrix<double, 6, 6> C = Eigen::Matrix<double, 6, 6>::Zero();
  C.topLeftCorner<3, 3>().setConstant(lambda);
  C.diagonal() << lambda + 2 * mu, lambda + 2 * mu, lambda + 2 * mu, mu, mu, mu;
  CHECK((compliance(isotropic(E, nu)) * C).isIdentity(1e-12));
}

TEST_CASE("the handbook's constants of Sitka spruce are a possible solid")
{
  CHECK(complaint(sitka()) == "");
}

TEST_CASE("a modulus that is zero, negative or not a number is refused by name")
{
  const std::pair<const char*, double OrthotropicElastic::*> moduli[] = {
      {"E1", &OrthotropicElastic::E1},   {"E2", &OrthotropicElastic::E2},   {"E3", &OrthotropicElastic::E3},
      {"G12", &OrthotropicElastic::G12}, {"G13", &OrthotropicElastic::G13}, {"G23", &OrthotropicElastic::G23}};
  for (const auto& [name, member] : moduli)
    for (const double bad :
         {0.0, -1e9, std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()})
    {
      OrthotropicElastic m = sitka();
      m.*member = bad;
      CAPTURE(bad);
      CHECK(mentions(complaint(m), std::string(name) + " must be positive and finite"));
    }
}

TEST_CASE("a Poisson ratio beyond the square root of the ratio of moduli is refused by name")
{
  // |nu_ij| < sqrt(E_i/E_j), [Jones1999] sec. 2.4. Sitka: sqrt(1/0.078) = 3.58, sqrt(1/0.043) = 4.82, sqrt(78/43)
  // = 1.35.
  OrthotropicElastic m = sitka();
  m.nu12 = 3.6;
  CHECK(mentions(complaint(m), "|nu12|"));
  m = sitka();
  m.nu13 = -4.9;
  CHECK(mentions(complaint(m), "|nu13|"));
  m = sitka();
  m.nu23 = 1.4;
  CHECK(mentions(complaint(m), "|nu23|"));
  m = sitka();
  m.nu12 = std::numeric_limits<double>::quiet_NaN();
  CHECK(mentions(complaint(m), "|nu12|"));
  // 0.372 given as the ratio of the soft axis: the frequent slip the message speaks of.
  m = sitka();
  std::swap(m.E1, m.E2);
  CHECK(mentions(complaint(m), "swapped"));
}

TEST_CASE("an isotropic solid is possible between nu = -1 and nu = 1/2 and nowhere else")
{
  CHECK(complaint(isotropic(1e9, 0.499)) == "");
  CHECK(complaint(isotropic(1e9, -0.999)) == "");
  CHECK(mentions(complaint(isotropic(1e9, 0.501)), "release energy"));
  CHECK(mentions(complaint(isotropic(1e9, 0.9)), "release energy"));
  CHECK(mentions(complaint(isotropic(1e9, 1.1)), "|nu12|"));
}

TEST_CASE("refusal by the determinant agrees with the eigenvalues of the compliance")
{
  // Signs of the ratios matter: the triple product changes its sign with one of them.
  int refused = 0;
  for (const double nu12 : {-0.9, -0.3, 0.4, 0.9})
    for (const double nu13 : {-0.8, 0.1, 0.7})
      for (const double nu23 : {-0.6, 0.2, 0.8})
      {
        OrthotropicElastic m = isotropic(1e9, 0.0);
        m.E2 = 0.9e9;
        m.E3 = 1.1e9;
        m.nu12 = nu12;
        m.nu13 = nu13;
        m.nu23 = nu23;
        const Eigen::Matrix3d S = compliance(m).topLeftCorner<3, 3>();
        const bool possible = S.determinant() > 0.0 && S.topLeftCorner<2, 2>().determinant() > 0.0;
        CHECK(complaint(m).empty() == possible);
        refused += possible ? 0 : 1;
      }
  CHECK(refused > 5);
  CHECK(refused < 31);
}

TEST_CASE("a loss step changes each modulus by its own loss factor and leaves ratios and density alone")
{
  const Material wood = {.name = "wood",
                         .elastic = sitka(),
                         .density = 400.0,
                         .loss = {.E1 = 0.01, .E2 = 0.02, .E3 = 0.03, .G12 = 0.04, .G13 = 0.05, .G23 = 0.06}};
  const Material changed = with_loss_step(wood, 0.5);
  CHECK(changed.elastic.E1 / wood.elastic.E1 == doctest::Approx(1.005));
  CHECK(changed.elastic.E2 / wood.elastic.E2 == doctest::Approx(1.010));
  CHECK(changed.elastic.E3 / wood.elastic.E3 == doctest::Approx(1.015));
  CHECK(changed.elastic.G12 / wood.elastic.G12 == doctest::Approx(1.020));
  CHECK(changed.elastic.G13 / wood.elastic.G13 == doctest::Approx(1.025));
  CHECK(changed.elastic.G23 / wood.elastic.G23 == doctest::Approx(1.030));
  CHECK(changed.elastic.nu12 == wood.elastic.nu12);
  CHECK(changed.density == wood.density);
}
