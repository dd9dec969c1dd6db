// SPDX-License-Identifier: MPL-2.0
#include "sample_models.h"

#include <plate/laminates/failure.h>
#include <plate/materials/library.h>

#include <doctest/doctest.h>

#include <cmath>

using namespace plate;

namespace
{

/// [Kaw2006] table 2.1.
constexpr Strength carbon = {.Xt = 1500e6, .Xc = 1500e6, .Yt = 40e6, .Yc = 246e6, .S = 68e6};

/// Left side of the criterion, [TsaiHahn1980] ch. 7: one on the surface.
double tsai_wu_sum(const Strength& s, const Eigen::Vector3d& stress)
{
  const double F11 = 1.0 / (s.Xt * s.Xc);
  const double F22 = 1.0 / (s.Yt * s.Yc);
  return F11 * stress(0) * stress(0) + F22 * stress(1) * stress(1) + stress(2) * stress(2) / (s.S * s.S) -
         std::sqrt(F11 * F22) * stress(0) * stress(1) + (1.0 / s.Xt - 1.0 / s.Xc) * stress(0) +
         (1.0 / s.Yt - 1.0 / s.Yc) * stress(1);
}

MaterialComponents only(int component, double stress)
{
  MaterialComponents out = MaterialComponents::Zero();
  out(component) = stress;
  return out;
}

} // namespace

TEST_CASE("one stress alone fails at its strength in either sense")
{
  const auto factor = [](double s1, double s2, double s12) { return tsai_wu_factor(carbon, {.load = {s1, s2, s12}}); };
  CHECK(factor(1e6, 0, 0) == doctest::Approx(1500.0));
  CHECK(factor(-1e6, 0, 0) == doctest::Approx(1500.0));
  CHECK(factor(0, 1e6, 0) == doctest::Approx(40.0));
  CHECK(factor(0, -1e6, 0) == doctest::Approx(246.0));
  CHECK(factor(0, 0, -2e6) == doctest::Approx(34.0));
}

TEST_CASE("the factor leads to the surface with the held stress left as it is")
{
  const PlaneStress stress = {.load = {300e6, -40e6, 12e6}, .held = {-30e6, 25e6, 3e6}};
  const double R = tsai_wu_factor(carbon, stress);
  CHECK(R > 0.0);
  CHECK(tsai_wu_sum(carbon, stress.held + R * stress.load) == doctest::Approx(1.0).epsilon(1e-10));
}

TEST_CASE("a held stress beyond the strength leaves nothing")
{
  CHECK(tsai_wu_factor(carbon, {.load = {1e6, 0, 0}, .held = {0, 41e6, 0}}) == 0.0);
  const StrengthMargin margin = maximum_stress_margin(carbon, {.load = {0, -1e6, 0}, .held = {0, 41e6, 0}});
  CHECK(margin.factor == 0.0);
  CHECK(margin.mode == FailureMode::tension_across);
}

TEST_CASE("without stress the margin is infinite")
{
  CHECK(std::isinf(tsai_wu_factor(carbon, {.load = {0, 0, 0}})));
  CHECK(std::isinf(maximum_stress_margin(carbon, {.load = {0, 0, 0}}).factor));
}

TEST_CASE("maximum stress names the component that gives way")
{
  const StrengthMargin margin = maximum_stress_margin(carbon, {.load = {100e6, -10e6, 30e6}});
  CHECK(margin.mode == FailureMode::shear);
  CHECK(margin.factor == doctest::Approx(68.0 / 30.0));
  const StrengthMargin relieved = maximum_stress_margin(carbon, {.load = {0, 10e6, 0}, .held = {0, -20e6, 0}});
  CHECK(relieved.mode == FailureMode::tension_across);
  CHECK(relieved.factor == doctest::Approx(6.0)); // (40 + 20) / 10
}

TEST_CASE("wood is judged by each stress alone, a ply by stresses together as well")
{
  Material material = *find_material("spruce");
  MaterialComponents stress = MaterialComponents::Zero();
  stress(0) = 20e6;
  stress(1) = 1.3e6;
  stress(5) = 3e6;
  const StrengthMargin wood = strength_margin(material, stress, MaterialComponents::Zero()).value();
  CHECK(wood.mode == FailureMode::tension_across);
  CHECK(wood.factor ==
        doctest::Approx(2.6 / 1.3)); // Sitka spruce, tension across 2.6 MPa [WoodHandbook2021] table 5-3a
  material.wood = false;
  const StrengthMargin ply = strength_margin(material, stress, MaterialComponents::Zero()).value();
  CHECK(ply.mode == FailureMode::combined);
  CHECK(ply.factor < wood.factor);
}

TEST_CASE("the third direction of wood counts as across, shear through the thickness by its own strengths")
{
  const Material& spruce = *find_material("spruce");
  const auto margin = [&](int component, double stress)
  { return strength_margin(spruce, only(component, stress), MaterialComponents::Zero()).value(); };
  CHECK(margin(2, -1.5e6).mode == FailureMode::compression_across);
  CHECK(margin(2, -1.5e6).factor == doctest::Approx(2.0)); // 3.0 MPa [WoodHandbook2021] table 5-3a
  CHECK(margin(3, 0.67e6).mode == FailureMode::shear_through);
  CHECK(margin(3, 0.67e6).factor == doctest::Approx(2.0)); // rolling shear, a fifth of 6.7 MPa
  CHECK(margin(4, 0.67e6).factor == doctest::Approx(10.0));
}

TEST_CASE("a material without strengths is not judged, a core through its thickness only")
{
  Material material = test::carbon_epoxy();
  CHECK_FALSE(strength_margin(material, only(0, 1e9), MaterialComponents::Zero()).has_value());
  const Material& core = *find_material("balsa");
  CHECK(std::isinf(strength_margin(core, only(0, 1e9), MaterialComponents::Zero()).value().factor));
  CHECK(strength_margin(core, only(4, 0.5e6), MaterialComponents::Zero()).value().factor == doctest::Approx(2.0));
}
