// SPDX-License-Identifier: MPL-2.0
#include "relative.h"

#include <plate/materials/fibre_ply.h>

#include <doctest/doctest.h>

using namespace plate;

TEST_CASE("thickness and density of a ply from its fibre")
{
  // t = W / (rho_f V_f), common practice; worked by hand: 150 g/m2 of carbon at 0.55 is 0.151515 mm and, with
  // 81.818 g/m2 of resin, 231.818 g/m2.
  const FibrePly ply = {.fibre_weight = 0.150, .fibre_volume = 0.55, .fibre_density = 1800.0, .resin_density = 1200.0};
  CHECK(1e3 * ply_thickness(ply) == test::relative(0.151515, 2e-6));
  CHECK(ply_density(ply) == doctest::Approx(1530.0).epsilon(1e-12));
  CHECK(1e3 * ply_thickness(ply) * ply_density(ply) == doctest::Approx(231.818).epsilon(1e-5));
}
