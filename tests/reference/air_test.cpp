// SPDX-License-Identifier: MPL-2.0
// A free plate in air.
#include "sample_models.h"

#include <plate/solvers/air_modes.h>

#include <doctest/doctest.h>

#include <cmath>

using namespace plate;

TEST_CASE("a free spruce-like rectangle in air")
{
  // Computed independently for this project: thin-plate theory by products of Legendre polynomials, incompressible air
  // by a panel method of its own, 350 x 200 x 2.5 mm, E 12 and 0.8, G12 0.75 GPa, nu12 0.38, 420 kg/m3, air of
  // 1.204 kg/m3; in air to 0.1 %. Stiff in transverse shear here, as thin-plate theory wants it.
  const double in_vacuo[] = {50.3623, 88.4207, 112.927, 134.811, 150.997, 245.387};
  const double in_air[] = {49.14, 86.35, 109.14, 132.06, 147.67, 240.47};
  const double thickness = 2.5e-3;
  const Material material = {.name = "spruce-like",
                             .elastic = {.E1 = 12e9,
                                         .E2 = 0.8e9,
                                         .E3 = 0.8e9,
                                         .G12 = 0.75e9,
                                         .G13 = 1e11,
                                         .G23 = 1e11,
                                         .nu12 = 0.38,
                                         .nu13 = 0.0,
                                         .nu23 = 0.0},
                             .density = 420.0};
  Model model = test::plate_model(test::grid_mesh({.x = test::lines_with_strips(0.175, 20, 1.2 * thickness),
                                                   .y = test::lines_with_strips(0.1, 12, 1.2 * thickness),
                                                   .surface = test::flat(),
                                                   .thickness = thickness}),
                                  test::solid(material, thickness));
  model.air_density = 1.204;
  const System system = assemble(model);
  const ModalResult modes = solve_modes(model, system, {.num_modes = 6});
  for (int i = 0; i < 6; ++i)
  {
    const double drop = modes.frequencies_hz(i) / modes.vacuum_frequencies_hz(i);
    CHECK(modes.vacuum_frequencies_hz(i) == doctest::Approx(in_vacuo[i]).epsilon(1e-3)); // thin-plate theory is higher
    CHECK(std::abs(drop / (in_air[i] / in_vacuo[i]) - 1.0) < 1e-3);
    MESSAGE("in air: mode ", i + 1, " drops by ", 100.0 * (1.0 - drop), " %, reference ",
            100.0 * (1.0 - in_air[i] / in_vacuo[i]), " %");
  }
}
