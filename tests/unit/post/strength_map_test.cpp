// SPDX-License-Identifier: MPL-2.0
#include "sample_models.h"

#include <plate/post/strength_map.h>

#include <doctest/doctest.h>

#include <array>
#include <cmath>

using namespace plate;

namespace
{

constexpr double thickness = 2e-3; // [m]

Material strong(double Yt)
{
  Material material = test::isotropic(10e9, 0.25, 500.0);
  material.strength = Strength{.Xt = 100e6, .Xc = 100e6, .Yt = Yt, .Yc = 100e6, .S = 60e6};
  material.wood = true; // by maximum stress
  return material;
}

/// Unknowns of a flat plate bent to a cylinder about y: u = -z w,x, w = -k x^2 / 2.
NodalUnknowns bent(const Model& model, double curvature)
{
  const DofMap dofs = number_unknowns(model);
  const test::Field field = {.displacement = [=](const Eigen::Vector3d& x)
                             { return Eigen::Vector3d(0.0, 0.0, -0.5 * curvature * x.x() * x.x()); },
                             .director_change = [=](const Eigen::Vector3d& x)
                             { return Eigen::Vector3d(curvature * x.x(), 0.0, 0.0); }};
  return at_nodes(dofs, test::unknowns_of(model, dofs, field));
}

} // namespace

TEST_CASE("a plate bent to a cylinder uses the same share of its strength everywhere")
{
  const Model model =
      test::plate_model(test::rectangle(0.2, 0.1, 3, 2, thickness), test::solid(strong(100e6), thickness));
  const double curvature = 2.0; // [1/m]
  const std::array<NodalUnknowns, 2> states = {bent(model, curvature), bent(model, 3.0 * curvature)};
  const std::vector<StrengthMap> maps = strength_maps(model, states);
  REQUIRE(maps.size() == 2);
  // Stress at the faces E / (1 - nu^2) k t / 2.
  const double stress = 10e9 / (1.0 - 0.0625) * curvature * 0.5 * thickness;
  CHECK(maps[0].margin == doctest::Approx(100e6 / stress).epsilon(1e-9));
  CHECK(maps[1].margin == doctest::Approx(100e6 / stress / 3.0).epsilon(1e-9));
  CHECK(maps[0].used.minCoeff() * maps[0].margin == doctest::Approx(1.0).epsilon(1e-9));
  CHECK(maps[0].worst.ply == 1);
  CHECK(std::abs(maps[0].worst.z) == doctest::Approx(0.5 * thickness));
  CHECK(std::abs(maps[0].worst.stress(0)) == doctest::Approx(stress).epsilon(1e-9));
}

TEST_CASE("the weakest ply and what gives way are named")
{
  // Two plies; the outer one, stretched by the bending, is weak along its second axis, which lies along x.
  Laminate laminate = test::solid(strong(100e6), 0.5 * thickness);
  laminate.plies.push_back({.material = strong(5e6), .thickness = 0.5 * thickness, .angle = Angle::degrees(90.0)});
  laminate.plies[1].material.name = "weak";
  const Model model = test::plate_model(test::rectangle(0.2, 0.1, 3, 2, thickness), laminate);
  const std::array<NodalUnknowns, 1> states = {bent(model, 1.0)};
  const StrengthMap map = strength_maps(model, states).front();
  CHECK(map.worst.ply == 2);
  CHECK(map.worst.material->name == "weak");
  CHECK(map.worst.mode == FailureMode::tension_across);
  CHECK(map.worst.z == doctest::Approx(0.5 * thickness));
  CHECK(map.margin == doctest::Approx(5e6 / (10e9 / (1.0 - 0.0625) * 0.5 * thickness)).epsilon(1e-9));
}

TEST_CASE("materials are listed once, and those without strength are named")
{
  Laminate laminate = test::solid(strong(100e6), 1e-3);
  laminate.plies.push_back(laminate.plies.front());
  laminate.plies.push_back({.material = test::carbon_epoxy(), .thickness = 1e-3});
  const Model model = test::plate_model(test::rectangle(0.2, 0.1, 3, 2, 3e-3), laminate);
  CHECK(materials_of(model).size() == 2);
  CHECK(materials_without_strength(model) == std::vector<std::string>{test::carbon_epoxy().name});
}
