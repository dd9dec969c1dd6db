// SPDX-License-Identifier: MPL-2.0
#include "relative.h"
#include "sample_models.h"

#include <plate/laminates/constants.h>
#include <plate/materials/library.h>
#include <plate/materials/moisture.h>

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace plate;

namespace
{

constexpr double ply = 0.125e-3; // [m]

/// Textbook lamina with the expansion of [Kaw2006] table 2.1: 0.02 and 22.5e-6/K, moisture 0 and 0.6.
Material lamina()
{
  Material m = test::carbon_epoxy();
  m.thermal = Expansion{.along = 0.02e-6, .across = 22.5e-6};
  m.swelling = Expansion{.along = 0.0, .across = 0.6};
  return m;
}

Matrix6d abd_of(const Laminate& laminate)
{
  return abd_matrix(section_stiffness(laminate, total_thickness(laminate), Eigen::Matrix3d::Identity(), {}));
}

Vector6d thermal_of(const Laminate& laminate)
{
  const std::optional<Vector6d> expansion = free_expansion(laminate, &Material::thermal);
  REQUIRE(expansion.has_value());
  return *expansion;
}

} // namespace

TEST_CASE("constants of a quasi-isotropic laminate")
{
  // [0/45/-45/90]s of the textbook lamina, recomputed independently: 69.675741 and 26.880431 GPa, 0.29603094.
  const Laminate laminate = test::stack(lamina(), ply, {0, 45, -45, 90, 90, -45, 45, 0});
  const EngineeringConstants c = membrane_constants(abd_of(laminate), 8 * ply);
  CHECK(c.Ex == doctest::Approx(69.675741e9).epsilon(1e-8));
  CHECK(c.Ey == doctest::Approx(69.675741e9).epsilon(1e-8));
  CHECK(c.Gxy == doctest::Approx(26.880431e9).epsilon(1e-8));
  CHECK(c.nuxy == doctest::Approx(0.29603094).epsilon(1e-7));
  for (const double angle : {0.0, 10.0, 77.0, 200.0}) // the same in all directions
    CHECK(strip_stiffness(abd_of(laminate), 8 * ply, Angle::degrees(angle)).modulus ==
          doctest::Approx(69.675741e9).epsilon(1e-8));
}

TEST_CASE("a strip cut off the axis of a ply has the modulus of the textbook")
{
  // [Jones1999] eq. 2.97: 1/Ex = c^4/E1 + (1/G12 - 2 nu12/E1) s^2 c^2 + s^4/E2.
  const OrthotropicElastic e = lamina().elastic;
  const Matrix6d abd = abd_of(test::stack(lamina(), ply, {0}));
  for (const double degrees : {0.0, 15.0, 30.0, 45.0, 60.0, 90.0})
  {
    const double c = std::cos(degrees * std::numbers::pi / 180.0);
    const double s = std::sin(degrees * std::numbers::pi / 180.0);
    const double compliance =
        std::pow(c, 4) / e.E1 + (1.0 / e.G12 - 2.0 * e.nu12 / e.E1) * s * s * c * c + std::pow(s, 4) / e.E2;
    const StripStiffness strip = strip_stiffness(abd, ply, Angle::degrees(degrees));
    CHECK(strip.modulus == doctest::Approx(1.0 / compliance).epsilon(1e-9));
    CHECK(strip.bending == doctest::Approx(std::pow(ply, 3) / 12.0 / compliance).epsilon(1e-9));
  }
}

TEST_CASE("a homogeneous plate has its material's constants in stretching and in bending")
{
  const Material m = test::isotropic(70e9, 0.3, 2700.0);
  const Laminate laminate = test::solid(m, 3e-3);
  for (const EngineeringConstants& c :
       {membrane_constants(abd_of(laminate), 3e-3), bending_constants(abd_of(laminate), 3e-3)})
  {
    CHECK(c.Ex == doctest::Approx(70e9));
    CHECK(c.Ey == doctest::Approx(70e9));
    CHECK(c.Gxy == doctest::Approx(70e9 / 2.6));
    CHECK(c.nuxy == doctest::Approx(0.3));
  }
  // sqrt(E/rho^3), the maker's figure of a material (common practice).
  const double bending = strip_stiffness(abd_of(laminate), 3e-3, {}).bending;
  CHECK(radiation_ratio(bending, areal_mass(laminate)) == doctest::Approx(std::sqrt(70e9 / std::pow(2700.0, 3))));
}

TEST_CASE("thermal expansion of balanced laminates")
{
  // Expected values recomputed independently for the lamina above [1e-6/K].
  const auto check = [](const std::vector<double>& degrees, double x, double y)
  {
    const Vector6d e = 1e6 * thermal_of(test::stack(lamina(), ply, degrees));
    CHECK(e(0) == doctest::Approx(x).epsilon(1e-5));
    CHECK(e(1) == doctest::Approx(y).epsilon(1e-5));
    CHECK(std::abs(e(2)) < 1e-9);
    CHECK(e.tail<3>().cwiseAbs().maxCoeff() < 1e-6);
  };
  check({0, 90, 90, 0}, 1.52393, 1.52393);
  check({0, 0, 90, 90, 0, 0}, 0.93026, 2.59959);
  check({30, -30, -30, 30}, -2.36885, 11.36468);
  // Cross-ply in closed form: [a1 (E1 + nu12 E2) + a2 E2 (1 + nu12)] / (E1 + E2 + 2 nu12 E2).
  const OrthotropicElastic e = lamina().elastic;
  const double closed =
      (0.02 * (e.E1 + e.nu12 * e.E2) + 22.5 * e.E2 * (1.0 + e.nu12)) / (e.E1 + e.E2 + 2.0 * e.nu12 * e.E2);
  CHECK(closed == doctest::Approx(1.52393).epsilon(1e-5));
}

TEST_CASE("an unsymmetric laminate warps when it cools")
{
  // [0/90], two plies of 0.125 mm, -100 K: curvature 6.80787e-3 1/mm, recomputed independently.
  const Vector6d e = -100.0 * thermal_of(test::stack(lamina(), ply, {0, 90}));
  CHECK(std::abs(e(3)) == doctest::Approx(6.80787).epsilon(1e-5));
  CHECK(e(4) == doctest::Approx(-e(3)));
  // The 90 degree ply lies outside and shrinks along x: x becomes shorter outside, so its curvature is negative.
  CHECK(e(3) < 0.0);
}

TEST_CASE("expansion is unknown where one ply has none")
{
  Laminate laminate = test::stack(lamina(), ply, {0, 90});
  laminate.plies[1].material.thermal.reset();
  CHECK_FALSE(free_expansion(laminate, &Material::thermal).has_value());
  CHECK(free_expansion(laminate, &Material::swelling).has_value());
}

TEST_CASE("a spruce plate swells across by millimetres, a laminate hardly")
{
  // 200 mm across, from 40 to 70 % humidity at 21 deg C: 7.70 to 13.09 % moisture; radial swelling of Sitka spruce
  // 0.00148 per % ([WoodHandbook2021] table 13-5): 1.60 mm. Cross-ply of the lamina at 0.45 % uptake: 0.036 mm. Both
  // worked by hand.
  const auto across = [](const Laminate& laminate, double moisture)
  { return 200.0 * moisture * free_expansion(laminate, &Material::swelling).value()(1); };
  const double change = equilibrium_moisture({.temperature = 21.0, .humidity = 0.70}) -
                        equilibrium_moisture({.temperature = 21.0, .humidity = 0.40});
  CHECK(across(test::solid(*find_material("spruce"), 3e-3, 0.0, Grain::carved), change) ==
        doctest::Approx(1.60).epsilon(5e-3));
  CHECK(across(test::stack(lamina(), ply, {0, 90, 90, 0}), 0.0045) == test::relative(0.036, 5e-3));
}
