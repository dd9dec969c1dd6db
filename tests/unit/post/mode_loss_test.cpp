// SPDX-License-Identifier: MPL-2.0
#include "relative.h"
#include "sample_models.h"

#include <plate/post/mode_loss.h>
#include <plate/solvers/modal.h>

#include <doctest/doctest.h>

#include <cmath>
#include <utility>

using namespace plate;

namespace
{

Material spruce(const LossFactors& loss)
{
  Material material = test::reference_spruce();
  material.loss = loss;
  return material;
}

/// Losses of the lowest modes of an arched carved plate with a bar, all of one wood.
Eigen::VectorXd losses_of(const LossFactors& loss)
{
  test::GridPlate grid = {.x = {-0.1, -0.06, 0.0, 0.06, 0.1},
                          .y = {-0.06, -0.02, 0.0, 0.02, 0.03, 0.06},
                          .surface = test::biparabolic(0.2, 0.12, 0.012),
                          .thickness = 3e-3};
  grid.under_bar = [](double x, double y) { return std::abs(x) < 0.06 && y > 0.02 && y < 0.03; };
  Model model = test::plate_model(test::grid_mesh(grid), test::solid(spruce(loss), 3e-3, 10, Grain::carved));
  model.bars = {{.material = spruce(loss), .width = 0.01, .profile = {{-0.06, 0.06}, {4e-3, 7e-3}}}};
  const System system = assemble(model);
  return mode_losses(model, system.dofs, solve_modes(system, {.num_modes = 6}).shapes);
}

} // namespace

TEST_CASE("one loss factor for all moduli is the loss of every mode")
{
  // All stiffness scales with one complex factor.
  const double eta = 0.013;
  const Eigen::VectorXd loss = losses_of({.E1 = eta, .E2 = eta, .E3 = eta, .G12 = eta, .G13 = eta, .G23 = eta});
  for (const double value : loss)
    CHECK(value == doctest::Approx(eta).epsilon(1e-9));
}

TEST_CASE("the loss of a mode is the sum of what each modulus brings, each between nothing and its own loss")
{
  // Modal strain energy is linear in the losses, [Ungar1962].
  const double eta = 0.01;
  double LossFactors::*const moduli[] = {&LossFactors::E1,  &LossFactors::E2,  &LossFactors::E3,
                                         &LossFactors::G12, &LossFactors::G13, &LossFactors::G23};
  Eigen::VectorXd sum = Eigen::VectorXd::Zero(6);
  for (const auto modulus : moduli)
  {
    LossFactors one;
    one.*modulus = eta;
    const Eigen::VectorXd loss = losses_of(one);
    CHECK(loss.minCoeff() >= 0.0);
    CHECK(loss.maxCoeff() < eta);
    CHECK(loss.maxCoeff() > 1e-4 * eta); // each takes part in some mode of a carved plate
    sum += loss;
  }
  for (const double value : sum)
    CHECK(value == test::relative(eta, 1e-6));
}

TEST_CASE("a thin strip loses what the modulus along it loses")
{
  // Bending of a slender beam without Poisson coupling strains only along itself.
  Material wood = spruce({.E1 = 0.007, .E2 = 0.02, .E3 = 0.03, .G12 = 0.04, .G13 = 0.05, .G23 = 0.06});
  wood.elastic.nu12 = wood.elastic.nu13 = wood.elastic.nu23 = 0.0;
  for (const auto& [degrees, expected] : {std::pair(0.0, 0.007), std::pair(90.0, 0.02)})
  {
    const Model model = test::plate_model(test::rectangle(0.3, 0.006, 12, 1, 1e-3), test::solid(wood, 1e-3, degrees));
    const System system = assemble(model);
    const Eigen::VectorXd loss = mode_losses(model, system.dofs, solve_modes(system, {.num_modes = 1}).shapes);
    CHECK(loss(0) == test::relative(expected, 5e-3)); // shear, (pi t/L)^2 E/G, takes a few tenths of a per cent
  }
}
