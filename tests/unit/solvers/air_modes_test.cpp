// SPDX-License-Identifier: MPL-2.0
#include "sample_models.h"

#include <plate/core/error.h>
#include <plate/post/surface_integral.h>
#include <plate/solvers/air_mass.h>
#include <plate/solvers/air_modes.h>

#include <doctest/doctest.h>

using namespace plate;

namespace
{

Model plate_in_air()
{
  Model model = test::plate_model(test::grid_mesh({.x = {-0.17, -0.1, -0.03, 0.04, 0.1, 0.17},
                                                   .y = {-0.1, -0.04, 0.01, 0.1},
                                                   .surface = test::biparabolic(0.34, 0.2, 0.012),
                                                   .thickness = 2.5e-3}),
                                  test::solid(test::reference_spruce(), 2.5e-3, 15.0, Grain::carved));
  model.air_density = 1.204;
  return model;
}

} // namespace

TEST_CASE("modes in air are stationary with the mass of the air, lower than in vacuo and named with these")
{
  const Model model = plate_in_air();
  const System system = assemble(model);
  const ModalResult in_vacuo = solve_modes(system, {.num_modes = 6});
  const ModalResult in_air = solve_modes(model, system, {.num_modes = 6});
  REQUIRE(in_air.frequencies_hz.size() == 6);
  for (int i = 0; i < 6; ++i)
  {
    CHECK(in_air.frequencies_hz(i) < 0.99 * in_vacuo.frequencies_hz(i));
    CHECK(in_air.frequencies_hz(i) > 0.95 * in_vacuo.frequencies_hz(i));
    CHECK(in_air.vacuum_frequencies_hz(i) == doctest::Approx(in_vacuo.frequencies_hz(i)).epsilon(1e-7));
  }
  Eigen::MatrixXd w(static_cast<Eigen::Index>(model.mesh.nodes.size()), 6);
  for (int i = 0; i < 6; ++i)
    w.col(i) = normal_displacement(model.mesh, nodal_displacements(system.dofs, in_air.shapes.col(i)));
  const Eigen::MatrixXd mass = in_air.shapes.transpose() * (system.M.selfadjointView<Eigen::Lower>() * in_air.shapes) +
                               air_mass(model.mesh, w, model.air_density);
  CHECK((mass - Eigen::MatrixXd::Identity(6, 6)).cwiseAbs().maxCoeff() < 1e-9);
}

TEST_CASE("modes in vacuo beyond those solved for add next to nothing")
{
  const Model model = plate_in_air();
  const System system = assemble(model);
  const ModalResult usual = solve_modes(model, system, {.num_modes = 6});
  const ModalResult rich = modes_in_air(model, system, solve_modes(system, {.num_modes = 60}), 6);
  for (int i = 0; i < 6; ++i)
    CHECK(usual.frequencies_hz(i) == doctest::Approx(rich.frequencies_hz(i)).epsilon(5e-5));
  CHECK_THROWS_AS(static_cast<void>(modes_in_air(model, system, solve_modes(system, {.num_modes = 4}), 6)),
                  InvalidInput);
}

TEST_CASE("without air the modes are those of the system")
{
  Model model = plate_in_air();
  model.air_density = 0.0;
  const System system = assemble(model);
  const ModalResult modes = solve_modes(model, system, {.num_modes = 4});
  CHECK(modes.frequencies_hz == solve_modes(system, {.num_modes = 4}).frequencies_hz);
  CHECK(modes.vacuum_frequencies_hz.size() == 0);
  model.air_density = -1.0;
  CHECK_THROWS_AS(check_model(model), InvalidInput);
}
